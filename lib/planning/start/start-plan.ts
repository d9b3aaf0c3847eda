import type { Limits } from '#lib/checks/thresholds.ts';
import type { HistoryLimit } from '#lib/domain/history.ts';
import { kitMissing } from '#lib/domain/kit.ts';
import type { PlanLine } from '#lib/domain/plan-line.ts';
import type { Side, Support } from '#lib/domain/vocabulary.ts';
import { proposeDose } from '../dose.ts';
import { isAtHand } from '../gaps/asks-of-skill.ts';
import type { GapLadder, GapRung } from '../gaps/gap-types.ts';
import { limitOnItem, setsUnderLimit } from '../limit-on-item.ts';
import { isRange, sidesOf } from './same-drill.ts';
import { FIRST_WEEK_FEWER_SETS } from './start-numbers.ts';
import { openedBy } from './start-openings.ts';
import { answerFor, reachOf } from './start-reach.ts';
import type { StartAnswer, StartFacts } from './start-types.ts';

/** Where the client stands now, the newest of each ladder and side; `rungId` null: on none. */
export type StandsOn = { ladderId: string; side: Side; rungId: string | null };
export type StartPlanFacts = StartFacts & {
  places: readonly StandsOn[];
  answers: readonly StartAnswer[];
  limits: readonly HistoryLimit[];
  date: string;
  numbers: Limits;
};
/** A line as the client gets it; `planned`: the rung of the kept plan that it stands for. */
export type StartLine = PlanLine & { planned: string };
export type StartPlan = {
  /** From the second week on. */
  lines: StartLine[];
  /** The same in the first week: two sets fewer, at least one. */
  firstWeek: StartLine[];
  /** Lines of the template that the client does not get, each with why. */
  leftOut: { line: PlanLine; side: Side; name: string; why: string }[];
};

/**
 * A kept plan with the client's own rungs: each line keeps its session, sets and times a week, and is done on the rung
 * on which the client stands, on each side; on ladders that nobody placed it is the first rung. Targets come from the
 * start tests. Left out is what needs kit that is not at hand, what is not open, what a limit rules out and what
 * stands on no rung; a limit of "reduced" takes sets. The first week has two sets fewer than the dose, at least one.
 * The start rule: common practice, no source.
 */
export function startPlan(template: readonly PlanLine[], facts: StartPlanFacts): StartPlan {
  const lines: StartLine[] = [];
  const leftOut: StartPlan['leftOut'] = [];
  for (const line of template) {
    const ladder = facts.library.find(({ rungs }) => rungs.some(({ id }) => id === line.rungId));
    const planned = ladder?.rungs.find(({ id }) => id === line.rungId);
    if (!ladder || !planned) {
      const why = 'is no longer in the ladders';
      leftOut.push({ line, side: line.side, name: 'A drill of the kept plan', why });
      continue;
    }
    for (const side of sidesAsked(line, ladder, facts.places)) {
      const got = lineOn({ line, ladder, planned, side }, facts);
      const out = (why: string) => leftOut.push({ line, side, name: nameOf(ladder, planned, side), why });
      if ('why' in got) out(got.why);
      else if (lines.some((one) => isSameWork(one, got.line))) out('is the same rung as another line');
      else lines.push(got.line);
    }
  }
  const kept = lines.map((line) => withoutLostPair(line, lines));
  return { lines: kept, firstWeek: kept.map(firstWeekOf), leftOut };
}

/** Sets of the first week: two fewer than the dose, at least one; practice by minutes by half. */
export function firstWeekOf<Line extends { sets: number; minutes: number | null; target: number | null }>(
  line: Line,
): Line {
  const sets = Math.max(1, line.sets - FIRST_WEEK_FEWER_SETS);
  const minutes = line.minutes === null ? null : Math.max(1, Math.round(line.minutes / 2));
  return { ...line, sets, minutes };
}

/** Both sides as one line where they stand on the same rung; else each apart. */
function sidesAsked(line: PlanLine, ladder: GapLadder, places: readonly StandsOn[]): Side[] {
  if (line.side !== 'both') return [line.side];
  const [left, right] = (['left', 'right'] as const).map((side) => placeOf(ladder, side, places));
  return left && right && left.rungId !== right.rungId ? ['left', 'right'] : ['both'];
}

function placeOf(ladder: GapLadder, side: Side, places: readonly StandsOn[]): StandsOn | undefined {
  const here = places.filter(({ ladderId }) => ladderId === ladder.id);
  return (
    here.find((one) => one.side === side) ??
    here.find((one) => one.side === 'both') ??
    (side === 'both' ? here[0] : undefined)
  );
}

type Asked = { line: PlanLine; ladder: GapLadder; planned: GapRung; side: Side };

function lineOn(
  { line, ladder, planned, side }: Asked,
  facts: StartPlanFacts,
): { line: StartLine } | { why: string } {
  const place = placeOf(ladder, side, facts.places);
  if (place?.rungId === null) return { why: 'the client stands on no rung of it' };
  const rung = place ? ladder.rungs.find(({ id }) => id === place.rungId) : ladder.rungs[0];
  if (!rung) return { why: 'its rung is no longer in the ladders' };
  const opened = openedBy({ ladder, rung }, facts.answers, facts);
  if (!opened.open && !place) return { why: `not open yet: ${opened.words}` };
  const support = supportOf(line, opened.open ? opened.on : null, facts.kit);
  const missing = kitMissing(rung.equipment, support ? [...facts.kit, support] : facts.kit);
  if (missing) return { why: `needs ${missing}, which is not at hand` };
  const effect = limitOnItem(facts.limits, { rung, side, support }, facts.date, facts.numbers);
  if (effect.limit && effect.share <= 0) return { why: 'is ruled out by a limit' };
  const dose = doseOf({ line, planned, rung, ladder, side }, facts);
  return {
    line: {
      ...line,
      ...dose,
      rungId: rung.id,
      planned: planned.id,
      side: rung.eachSide ? side : 'both',
      support,
      sets: effect.limit ? setsUnderLimit(line.sets, effect) : line.sets,
      noKitRungId: rung.id === planned.id ? line.noKitRungId : null,
    },
  };
}

/** The support that opens the rung, else the planned one where it is at hand. */
function supportOf({ support }: PlanLine, on: Support | null, kit: readonly string[]): Support | null {
  if (on) return on;
  return support && (support === 'hard-floor' || support === 'fists' || isAtHand(support, kit))
    ? support
    : null;
}

/** By minutes as planned; else what the tests show on this rung, never over what the kept plan asks on its own rung. */
function doseOf(
  { line, planned, rung, ladder, side }: Asked & { rung: GapRung },
  { answers }: StartPlanFacts,
): Pick<PlanLine, 'target' | 'minutes'> {
  if (line.minutes !== null && (line.target === null || isRange(rung)))
    return { target: null, minutes: line.minutes };
  const shown = sidesOf(rung)
    .filter((one) => one === side || side === 'both' || one === 'both')
    .flatMap((one) => answerFor(answers, ladder, rung, one) ?? [])
    .filter((answer) => ['met', 'in-reach'].includes(reachOf(rung, answer)) && rung.measure !== 'made-tried')
    .map(({ values, clean }) => ({ values, whole: clean !== false }));
  const { target } = proposeDose(rung, shown);
  const most = rung.id === planned.id && line.target !== null ? line.target : target;
  return { target: rung.measure === 'range-down' ? most : Math.min(most, target), minutes: null };
}

function isSameWork(a: StartLine, b: StartLine): boolean {
  return (
    a.session === b.session &&
    a.rungId === b.rungId &&
    (a.side === b.side || a.side === 'both' || b.side === 'both')
  );
}

function withoutLostPair(line: StartLine, lines: readonly StartLine[]): StartLine {
  const is = lines.some((one) => one.session === line.session && one.rungId === line.pairedWith);
  return is ? line : { ...line, pairedWith: null };
}

function nameOf(ladder: GapLadder, rung: GapRung, side: Side): string {
  const name = isRange(rung) ? ladder.name : rung.name;
  return side === 'both' ? name : `${name}, ${side}`;
}
