import type { ShownRow } from '#lib/views/board-draw.ts';

/** What the acts on a row need to know of it. */
export type RowFacts = Pick<
  ShownRow,
  | 'clientId'
  | 'name'
  | 'step'
  | 'questions'
  | 'needsWords'
  | 'nextCheckIn'
  | 'onlyQuestion'
  | 'mayBeKnown'
  | 'known'
>;
