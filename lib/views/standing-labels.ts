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

/** What each standing does, said where it is chosen. */
export const STANDING_MEANINGS: Record<Standing, string> = {
  invited: 'Has a link and has not come in yet. The first sign-in on the phone makes it “starting”.',
  starting: 'Is here and being got to know. Every night is checked.',
  'in-training': 'Trains by a plan. Every night is checked.',
  paused:
    'Days off from that day: no nights, nothing is waited for. The phone still works, and a danger sign or pain of 6 or more in a check-in still comes at once.',
  ending: 'Coaching comes to its end. Every night is checked until “left”.',
  left: 'From that day no nights, no phone, nothing comes up; what is open closes with “left”. The history stays.',
  back: 'Here again after a pause or after leaving: nights run from that day, and the first week is held against the weeks before the break.',
};
