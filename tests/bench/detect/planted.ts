import type { CheckKind } from '#lib/domain/vocabulary.ts';

/** What goes wrong (or right) in a client, from its onset; the truth that a check should find. */
export type Planted = {
  name: string;
  kind: CheckKind;
  /** Days after the onset within which finding it counts. */
  windowDays: number;
  /** Share that must be found and that is aimed at, with enough history, percent. */
  must: number;
  aim: number;
  /** Median days to find: the most. */
  mustDays?: string;
};

const FIRST = { must: 90, aim: 97 };
const SECOND = { must: 85, aim: 92 };
const THIRD = { must: 80, aim: 90 };

/** Windows as in the calibration of the rules. */
export const PLANTED: Planted[] = [
  { name: 'stall', kind: 'stalled', windowDays: 84, ...FIRST, mustDays: '55' },
  { name: 'step', kind: 'step-up-earned', windowDays: 28, ...FIRST },
  { name: 'pain-slow', kind: 'pain-rising', windowDays: 35, ...FIRST },
  { name: 'pain-sudden', kind: 'pain-rising', windowDays: 21, ...FIRST, mustDays: '6' },
  { name: 'pain-mornings', kind: 'pain-rising', windowDays: 35, ...FIRST },
  { name: 'pain-lingering', kind: 'pain-lingering', windowDays: 49, ...FIRST },
  { name: 'pain-six', kind: 'pain-high', windowDays: 10, ...FIRST, mustDays: '6' },
  { name: 'after-ground', kind: 'pain-after-ground', windowDays: 42, ...FIRST },
  { name: 'quiet', kind: 'gone-quiet', windowDays: 21, ...FIRST },
  { name: 'fading', kind: 'fading', windowDays: 56, ...FIRST },
  { name: 'too-little-time', kind: 'too-little-time', windowDays: 42, ...SECOND },
  { name: 'side', kind: 'side-gap', windowDays: 70, ...SECOND, mustDays: '35' },
  { name: 'fault', kind: 'one-side-fault', windowDays: 56, ...SECOND },
  { name: 'window', kind: 'window-gap', windowDays: 56, ...SECOND },
  { name: 'jump', kind: 'load-jump', windowDays: 14, ...THIRD, mustDays: '6' },
  { name: 'jump-one-ladder', kind: 'load-jump', windowDays: 14, ...THIRD, mustDays: '6' },
  { name: 'stacked', kind: 'stacked-stress', windowDays: 24, ...THIRD },
  { name: 'slipping', kind: 'slipping', windowDays: 56, ...THIRD },
  { name: 'return', kind: 'return-too-fast', windowDays: 12, ...THIRD },
  { name: 'no-rest', kind: 'no-let-up', windowDays: 26, must: 65, aim: 85 },
  { name: 'monotony', kind: 'no-let-up', windowDays: 26, must: 65, aim: 85 },
  { name: 'hard-days', kind: 'no-let-up', windowDays: 26, must: 65, aim: 85 },
];
