import type { HistoryRung } from '#lib/domain/history.ts';
import type { Family, Side, Support } from '#lib/domain/vocabulary.ts';

export type GapRung = HistoryRung & { equipment: readonly string[] };

/** What must stand before a rung opens; rungs by their keys, such as `H3.4`. */
export type GapOpening = {
  opens: string;
  /** All of these; inside one entry any of its rungs will do. */
  needsAll: readonly (readonly string[])[];
  /** Open at once on one of these. */
  orOnSupports: readonly Support[];
  under18CoachTick: boolean;
  words: string;
};

/** A ladder in use with its rungs, easiest first. Ladders of a library come in its order. */
export type GapLadder = {
  id: string;
  name: string;
  partId: string;
  part: string;
  skillId: string;
  skill: string;
  family: Family;
  openings: readonly GapOpening[];
  rungs: readonly GapRung[];
};

/** What one slow lowering or attempt on film shows of a part. */
export const FILM_SHOWS = ['not-seen', 'steady', 'hurried', 'drops'] as const;
export type FilmShows = (typeof FILM_SHOWS)[number];

/** What is known of a part on one side. */
export type SideSeen = {
  side: Side;
  film: FilmShows;
  /** The rung it was done on, and how: sets (tries, where good ones are counted) of at least `value`. */
  rungId: string | null;
  sets: number | null;
  value: number | null;
  clean: boolean | null;
  /** Worst joint or tendon pain in this part, 0-10. */
  pain: number | null;
};
/** One part, by its ladder: the rung the skill asks of it, and what is known. */
export type PartSeen = { ladderId: string; askedRungId: string; sides: readonly SideSeen[] };

/** An assessment as a coach fills it in. */
export type Assessment = {
  skillId: string;
  /** The rung the client wants to be able to do. */
  aimRungId: string;
  /** Kit at hand beside a floor and a wall. */
  kit: readonly string[];
  /** The different sessions there are to put drills in: A, B, short. */
  sessions: readonly string[];
  /** The coach allows what is open to under-18s only so. */
  under18Allowed: boolean;
  parts: readonly PartSeen[];
};

export type AskRole = 'aim' | 'part' | 'opening' | 'mobility';
/** What the skill asks of one part. `mobility`: belongs to the parts; it comes along, it is no gap by itself. */
export type Ask = { ladder: GapLadder; rung: GapRung; role: AskRole; why: string };

export const PART_STANDINGS = ['open', 'not-known', 'near', 'covered'] as const;
export type PartStandingName = (typeof PART_STANDINGS)[number];
export type SideStanding = {
  seen: SideSeen;
  standing: PartStandingName;
  /** Of the pass mark asked, 0-1; undefined where it was not done, and for ranges. */
  share: number | undefined;
  /** Rungs still to climb to the asked one; undefined when no rung is known. */
  rungsBelow: number | undefined;
  words: string;
};
/** Where the client stands in a part: the worst side decides. */
export type PartStanding = { ask: Ask; standing: PartStandingName; sides: SideStanding[] };
