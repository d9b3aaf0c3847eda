import type { Side, Support } from '#lib/domain/vocabulary.ts';

export const DRAFT_SOURCES = ['gap-finder', 'reason', 'copy', 'start'] as const;
export type DraftSource = (typeof DRAFT_SOURCES)[number];

/**
 * One proposed line of a plan. `put`: this is to stand in the session, in the place of the line of the same rung and
 * side, else of what it `replaces`; it is added where there is neither. `drop`: the line of this rung, side and session is
 * to go; its dose is not read.
 */
export type PlanDraftLine = {
  act: 'put' | 'drop';
  /** A, B or short. */
  session: string;
  rungId: string;
  /** A rung done on each side may be proposed for `both`: it is planned left and right apart. */
  side: Side;
  sets: number;
  /** In the rung's measure; null: practised by minutes. */
  target: number | null;
  minutes: number | null;
  timesPerWeek: number;
  /** What it is done on; left out or null: as the rung says. */
  support?: Support | null | undefined;
  /** The rung whose line it takes the place of; null: none, it stands beside; left out: whichever is of its ladder. */
  replaces?: string | null | undefined;
  /** The rung of the same session that it is done together with, as a pyramid. */
  pairedWith?: string | null | undefined;
  /** Why this line, in one plain sentence for the coach. */
  why: string;
};

/** What is proposed for a client's plan, to be accepted, changed or dropped line by line in the plan editor. */
export type PlanDraft = {
  source: DraftSource;
  /** The reason of the night that it answers, when it answers one. */
  reasonId: string | null;
  lines: PlanDraftLine[];
  /** Filled in as "why this change" of the version. */
  why: string;
  /** Filled in as the words to the client. */
  notes: string;
  /** Skills proposed to leave the focus, by name. */
  dropSkills: string[];
  /** Weeks proposed as easy ones, counted from the first day of the new version: 1 is its first week. */
  easyWeeks: number[];
  /** What else the step would bring, in words and not among the lines: "from Wed 2 Dec 80 % of the sets". */
  later?: string[] | undefined;
};
