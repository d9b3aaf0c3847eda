import type { CheckKind } from '#lib/domain/vocabulary.ts';

/** What goes wrong (or right) in a client, from its onset; the truth that a check should find. */
export type Planted = {
  name: string;
  kind: CheckKind;
  /** Days after the onset within which finding it counts. */
  windowDays: number;
  group:
    | 'pain, contact, stall, step'
    | 'too little, fault, window, side'
    | 'load, slipping, return'
    | 'no let-up';
  must: number;
};

const FIRST = 'pain, contact, stall, step' as const;
const SECOND = 'too little, fault, window, side' as const;
const THIRD = 'load, slipping, return' as const;

/** Windows as in the calibration of the rules; shares that must be found, with enough history, in percent. */
export const PLANTED: Planted[] = [
  { name: 'stall', kind: 'stalled', windowDays: 84, group: FIRST, must: 90 },
  { name: 'step', kind: 'step-up-earned', windowDays: 28, group: FIRST, must: 90 },
  { name: 'pain-slow', kind: 'pain-rising', windowDays: 35, group: FIRST, must: 90 },
  { name: 'pain-sudden', kind: 'pain-rising', windowDays: 21, group: FIRST, must: 90 },
  { name: 'pain-mornings', kind: 'pain-rising', windowDays: 35, group: FIRST, must: 90 },
  { name: 'pain-lingering', kind: 'pain-lingering', windowDays: 49, group: FIRST, must: 90 },
  { name: 'pain-six', kind: 'pain-high', windowDays: 10, group: FIRST, must: 90 },
  { name: 'after-ground', kind: 'pain-after-ground', windowDays: 42, group: FIRST, must: 90 },
  { name: 'quiet', kind: 'gone-quiet', windowDays: 21, group: FIRST, must: 90 },
  { name: 'fading', kind: 'fading', windowDays: 56, group: FIRST, must: 90 },
  { name: 'too-little-time', kind: 'too-little-time', windowDays: 42, group: SECOND, must: 85 },
  { name: 'side', kind: 'side-gap', windowDays: 70, group: SECOND, must: 85 },
  { name: 'fault', kind: 'one-side-fault', windowDays: 56, group: SECOND, must: 85 },
  { name: 'window', kind: 'window-gap', windowDays: 56, group: SECOND, must: 85 },
  { name: 'jump', kind: 'load-jump', windowDays: 14, group: THIRD, must: 80 },
  { name: 'jump-one-ladder', kind: 'load-jump', windowDays: 14, group: THIRD, must: 80 },
  { name: 'stacked', kind: 'stacked-stress', windowDays: 24, group: THIRD, must: 80 },
  { name: 'slipping', kind: 'slipping', windowDays: 56, group: THIRD, must: 80 },
  { name: 'return', kind: 'return-too-fast', windowDays: 12, group: THIRD, must: 80 },
  { name: 'no-rest', kind: 'no-let-up', windowDays: 26, group: 'no let-up', must: 65 },
];
