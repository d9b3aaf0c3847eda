import type { HistoryCheckIn, HistorySet } from '#lib/domain/history.ts';
import { MEASURE_UNITS } from '#lib/domain/labels.ts';
import type { Measure, Side } from '#lib/domain/vocabulary.ts';
import { doseInWords, setsInWords } from './phone-session.ts';

type Rung = {
  ladderId: string;
  ladder: string;
  skill: string;
  rungId: string;
  rung: string;
  position: number;
  measure: string;
  passSets: number;
  passTarget: number;
  passDays: number;
  passTries: number | null;
};
type Placement = { ladderId: string; side: Side; rungId: string; from: string };

export type StandingOnLadder = {
  side: Side;
  rung: string;
  /** 1 is the lowest rung. */
  number: number;
  of: number;
  since: string;
  /** "to go up: 3 × 20 s, on 3 days" */
  passMark: string;
  next: string | null;
  /** 0-1 of the pass mark in the last training of this rung; null when it was not trained yet or cannot be summed. */
  share: number | null;
  last: { date: string; text: string } | null;
};
export type LadderProgress = {
  ladderId: string;
  ladder: string;
  skill: string;
  standing: StandingOnLadder[];
};

/** Where the client stands on each ladder and side, what is left to the next rung. `recent`: newest first. */
export function ladderProgress(
  rungs: Rung[],
  placements: Placement[],
  recent: HistoryCheckIn[],
): LadderProgress[] {
  const ladders = new Map<string, Rung[]>();
  for (const rung of rungs) ladders.set(rung.ladderId, [...(ladders.get(rung.ladderId) ?? []), rung]);
  return [...ladders.values()].flatMap((ofLadder) => {
    const [first] = ofLadder;
    if (!first) return [];
    const standing = placements
      .filter((placement) => placement.ladderId === first.ladderId)
      .sort((a, b) => a.side.localeCompare(b.side))
      .flatMap((placement) => standingOf(placement, ofLadder, recent));
    return standing.length > 0
      ? [{ ladderId: first.ladderId, ladder: first.ladder, skill: first.skill, standing }]
      : [];
  });
}

function standingOf(placement: Placement, ladder: Rung[], recent: HistoryCheckIn[]): StandingOnLadder[] {
  const at = ladder.findIndex((rung) => rung.rungId === placement.rungId);
  const rung = ladder[at];
  if (!rung) return [];
  const unit = MEASURE_UNITS[rung.measure as Measure];
  const isOurs = (set: HistorySet) =>
    set.rungId === rung.rungId && (placement.side === 'both' || set.side === placement.side);
  const checkIn = recent.find((one) => one.sets.some(isOurs));
  const sets = checkIn?.sets.filter(isOurs) ?? [];
  const dose = doseInWords({ sets: rung.passSets, target: rung.passTarget, tries: rung.passTries, unit });
  return [
    {
      side: placement.side,
      rung: rung.rung,
      number: at + 1,
      of: ladder.length,
      since: placement.from,
      passMark: `to go up: ${dose}, on ${rung.passDays === 1 ? '1 day' : `${rung.passDays} days`}`,
      next: ladder[at + 1]?.rung ?? null,
      share: shareOf(sets, rung),
      last: checkIn ? { date: checkIn.date, text: setsInWords(sets, unit) } : null,
    },
  ];
}

/** Sum of min(set, target) over the best n clean sets / (n x target); the weaker side when both are there. */
function shareOf(sets: HistorySet[], rung: Rung): number | null {
  if (rung.measure.startsWith('range') || sets.length === 0 || rung.passTarget <= 0) return null;
  const sides = [...new Set(sets.map((set) => set.side))];
  return Math.min(
    ...sides.map((side) =>
      shareOfSide(
        sets.filter((set) => set.side === side),
        rung,
      ),
    ),
  );
}

function shareOfSide(sets: HistorySet[], rung: Rung): number {
  const best = sets
    .filter((set) => set.clean && set.value !== null)
    .map((set) => Math.min(set.value ?? 0, rung.passTarget))
    .sort((a, b) => b - a)
    .slice(0, rung.passSets);
  return best.reduce((sum, value) => sum + value, 0) / (rung.passSets * rung.passTarget);
}
