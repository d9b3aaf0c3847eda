import { type CheckKind, LEVELS, type Level, TIERS, type Tier } from '#lib/domain/vocabulary.ts';
import type { Limits } from './thresholds.ts';

/** Kinds of which any level is answered now, and which no night and no silence can close. */
export const URGENT_KINDS: readonly CheckKind[] = ['danger-sign', 'pain-high'];
/** Kinds that are answered today once they are at act. */
const TODAY_AT_ACT: readonly CheckKind[] = ['pain-rising', 'question-waiting', 'film-waiting', 'plan-ending'];

/** How soon a reason of this kind and level should be answered; null for a note, which stays on the client page. */
export function tierOf(kind: CheckKind, level: Level): Tier | null {
  if (URGENT_KINDS.includes(kind)) return 'now';
  if (level === 'note') return null;
  if (kind === 'step-up-earned') return 'good-news';
  return level === 'act' && TODAY_AT_ACT.includes(kind) ? 'today' : 'this-week';
}

/** What a reason adds to its client's row: nothing for notes and good news. */
export function pointsOf(kind: CheckKind, level: Level, limits: Limits): number {
  if (URGENT_KINDS.includes(kind)) return limits['points.danger'];
  if (level === 'note' || kind === 'step-up-earned') return 0;
  return level === 'act' ? limits['points.act'] : limits['points.watch'];
}

/** Negative when `a` is answered sooner than `b`; null comes last. */
export function compareTiers(a: Tier | null, b: Tier | null): number {
  return rankOf(a) - rankOf(b);
}

/** Positive when `a` is the higher level. */
export function compareLevels(a: Level, b: Level): number {
  return LEVELS.indexOf(a) - LEVELS.indexOf(b);
}

function rankOf(tier: Tier | null): number {
  return tier === null ? TIERS.length : TIERS.indexOf(tier);
}

export type RowReason = {
  kind: CheckKind;
  level: Level;
  points: number;
  tier: Tier | null;
  sentence: string;
  raisedAt: string;
};

/**
 * One client's row from the open reasons: the most urgent tier, the sum of points over kinds (a kind counts once, with
 * its highest), and the index of the reason that leads. Notes do not count. Nothing to show: `lead` is -1.
 */
export function rowOf(reasons: readonly RowReason[]): { tier: Tier; points: number; lead: number } {
  const shown = reasons
    .map((reason, index) => ({ ...reason, index }))
    .filter((reason): reason is RowReason & { tier: Tier; index: number } => reason.tier !== null);
  const highest = new Map<CheckKind, number>();
  for (const { kind, points } of shown) highest.set(kind, Math.max(points, highest.get(kind) ?? 0));
  const lead = shown.sort(
    (a, b) =>
      compareTiers(a.tier, b.tier) ||
      b.points - a.points ||
      compareText(a.raisedAt, b.raisedAt) ||
      compareLevels(b.level, a.level) ||
      compareText(a.kind, b.kind) ||
      compareText(a.sentence, b.sentence),
  )[0];
  const points = [...highest.values()].reduce((sum, each) => sum + each, 0);
  return { tier: lead?.tier ?? 'good-news', points, lead: lead?.index ?? -1 };
}

export type RowOrder = { tier: Tier; points: number; waitingSince: string; name: string };

/** Order of rows: tier, then most points, then longest waiting (ISO instants), then name. Equal rows: 0. */
export function compareRows(a: RowOrder, b: RowOrder): number {
  return (
    compareTiers(a.tier, b.tier) ||
    b.points - a.points ||
    compareText(a.waitingSince, b.waitingSince) ||
    compareText(a.name, b.name)
  );
}

function compareText(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
