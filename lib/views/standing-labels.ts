import type { Standing } from '#lib/domain/vocabulary.ts';

/** Where a client stands with the coach, as words inside a sentence. */
export const STANDING_LABELS: Record<Standing, string> = {
  invited: 'invited',
  starting: 'starting',
  'in-training': 'in training',
  paused: 'paused',
  ending: 'ending',
  left: 'left',
  back: 'back',
};
