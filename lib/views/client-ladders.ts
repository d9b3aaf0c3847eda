import { rungDays } from '#lib/checks/rung-days.ts';
import { scoredDays, scoreOf } from '#lib/checks/score.ts';
import { hasResult, isOfSide } from '#lib/checks/set-result.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import { asPercent } from '#lib/checks/words.ts';
import type { HistoryPlacement, HistoryRung } from '#lib/domain/history.ts';
import { MEASURE_UNITS } from '#lib/domain/labels.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { Measure, Side } from '#lib/domain/vocabulary.ts';
import { type ClientAxis, dayOn, PAGE_DAYS } from './client-axis.ts';
import { isGoalLadder, type LadderForecast, ladderForecasts } from './ladder-forecast.ts';
import { movesInWords } from './ladder-moves.ts';
import { shortDate } from './say-date.ts';
import { apart } from './spread-labels.ts';

export type LadderRung = {
  id: string;
  name: string;
  ladderId: string;
  position: number;
  measure: Measure;
  passSets: number;
  passTarget: number;
  usualWeeks: number;
};
export type LadderPath = {
  side: Side;
  /** Steps: on `level` from `at` (days on the axis) until the next point. */
  steps: { at: number; level: number }[];
  /** Days that met the pass mark. */
  passes: { at: number; level: number }[];
  /** Said right of the line, px from the top of the panel. */
  now: string;
  labelTop: number;
};
export type LadderPanel = {
  id: string;
  name: string;
  /** Lowest first. `reached` on either side. */
  rungs: { id: string; name: string; reached: boolean; current: boolean }[];
  paths: LadderPath[];
  summary: string;
  /** When the last rung will be passed; only of ladders that are drawn and lead to a goal. */
  forecasts: LadderForecast[];
  table: { since: string; side: string; rung: string }[];
};

/** Drawn first: ladders of the plan in force, those that moved last; the others are said in words. */
export type LaddersView = {
  panels: LadderPanel[];
  others: LadderPanel[];
  /** How often the client moved inside the axis, in one sentence; undefined without a ladder. */
  summary: string | undefined;
};

const SHOWN = 4;
const RECENT_DAYS = 28;
const BELOW = 2;
const ABOVE = 2;
const OFFSET: Record<Side, number> = { left: 0.14, both: 0, right: -0.14 };
const SIDE_ORDER: readonly Side[] = ['left', 'both', 'right'];
const LABEL_GAP = 18;
export const RUNG_HEIGHT = 22;

/**
 * Each ladder the client stands on: where on each side over the axis, where now, with what. `allRungs` are the
 * rungs of the team's ladders, so that those not yet reached are drawn too.
 */
export function ladderPanels(
  view: ClientView,
  axis: ClientAxis,
  about: { allRungs: readonly LadderRung[]; limits: Limits },
): LaddersView {
  const planned = new Set(
    (view.planOn(axis.to)?.items ?? []).flatMap((item) => view.rungs.get(item.rungId)?.ladderId ?? []),
  );
  const lastMove = (ladderId: string) =>
    view.standing
      .filter((one) => one.ladderId === ladderId)
      .map((one) => one.from)
      .sort()
      .at(-1) ?? '';
  const ids = [...new Set(view.standing.map((placement) => placement.ladderId))].sort(
    (x, y) =>
      Number(planned.has(y)) - Number(planned.has(x)) ||
      lastMove(y).localeCompare(lastMove(x)) ||
      x.localeCompare(y),
  );
  const panels = ids
    .map((ladderId) => panel(view, axis, { ladderId, ...about }))
    .filter((one): one is LadderPanel => one !== undefined);
  const rungs = withoutDoubles([...about.allRungs, ...[...view.rungs.values()].map(toLadderRung)]);
  const isGoal = isGoalLadder(view);
  const drawn = panels.slice(0, SHOWN).map((one) => ({
    ...one,
    forecasts: isGoal(one.id) ? ladderForecasts(view, one.id, rungs, about.limits) : [],
  }));
  return { panels: drawn, others: panels.slice(SHOWN), summary: movesInWords(panels) };
}

function panel(
  view: ClientView,
  axis: ClientAxis,
  about: { ladderId: string; allRungs: readonly LadderRung[]; limits: Limits },
): LadderPanel | undefined {
  const placements = view.history.placements
    .filter((one) => one.ladderId === about.ladderId && one.from <= axis.to)
    .sort((a, b) => a.from.localeCompare(b.from));
  const positionOf = (rungId: string) => view.rungs.get(rungId)?.position ?? 0;
  const held = placements.map((one) => positionOf(one.rungId));
  const now = view.standing.filter((one) => one.ladderId === about.ladderId);
  const known = [...view.rungs.values()].filter((rung) => rung.ladderId === about.ladderId);
  const ladderName = known[0]?.ladder;
  if (ladderName === undefined || held.length === 0) return undefined;
  const rungs = withoutDoubles([...about.allRungs, ...known.map(toLadderRung)])
    .filter((rung) => rung.ladderId === about.ladderId)
    .filter(
      (rung) => rung.position >= Math.min(...held) - BELOW && rung.position <= Math.max(...held) + ABOVE,
    )
    .sort((a, b) => a.position - b.position);
  const level = (rungId: string) => rungs.findIndex((rung) => rung.id === rungId);
  const sides = SIDE_ORDER.filter((side) => placements.some((one) => one.side === side));
  const paths = sides.map((side) => path(view, axis, { side, placements, level, limits: about.limits }));
  const places = apart(
    paths.map((one) => (rungs.length - 0.5 - (one.steps.at(-1)?.level ?? 0)) * RUNG_HEIGHT),
    LABEL_GAP,
  );
  return {
    id: about.ladderId,
    name: ladderName,
    rungs: rungs.map((rung) => ({
      id: rung.id,
      name: rungLabel(rung, ladderName),
      reached: rung.position <= Math.max(...now.map((one) => positionOf(one.rungId))),
      current: now.some((one) => one.rungId === rung.id),
    })),
    paths: paths.map((one, index) => ({ ...one, labelTop: (places[index] ?? 0) - LABEL_GAP / 2 })),
    forecasts: [],
    summary: `${ladderName}: ${now.map((one) => standingInWords(view, one)).join('; ')}.`,
    table: placements
      .map((one) => ({
        since: one.from,
        side: one.side,
        rung: rungs.find((rung) => rung.id === one.rungId)?.name ?? '',
      }))
      .reverse(),
  };
}

function path(
  view: ClientView,
  axis: ClientAxis,
  about: { side: Side; placements: HistoryPlacement[]; level: (rungId: string) => number; limits: Limits },
): LadderPath {
  const { side } = about;
  const own = about.placements.filter((one) => one.side === side);
  const level = (rungId: string) => about.level(rungId) + OFFSET[side];
  const before = own.filter((one) => dayOn(axis, one.from) < 0).at(-1);
  const inside = own.filter((one) => dayOn(axis, one.from) >= 0);
  const steps = [
    ...(before ? [{ at: 0, level: level(before.rungId) }] : []),
    ...inside.map((one) => ({ at: dayOn(axis, one.from), level: level(one.rungId) })),
  ];
  const last = steps.at(-1);
  const current = own.at(-1);
  return {
    side,
    steps: last ? [...steps, { at: PAGE_DAYS, level: last.level }] : steps,
    passes: own.flatMap((one, index) =>
      passDays(view, axis, { one, until: own[index + 1]?.from, level, limits: about.limits }),
    ),
    now: current ? nowInWords(view, current, about.limits) : '',
    labelTop: 0,
  };
}

function passDays(
  view: ClientView,
  axis: ClientAxis,
  about: {
    one: HistoryPlacement;
    until: string | undefined;
    level: (rungId: string) => number;
    limits: Limits;
  },
): { at: number; level: number }[] {
  const rung = view.rungs.get(about.one.rungId);
  if (!rung) return [];
  const { one, until, limits } = about;
  return rungDays(view, rung.id)
    .filter((day) => day.counts && day.date >= one.from && (until === undefined || day.date < until))
    .filter((day) => (scoreOf(rung, day.sets, one.side, limits) ?? 0) >= 1)
    .map((day) => ({ at: dayOn(axis, day.date) + 0.5, level: about.level(rung.id) }))
    .filter((point) => point.at >= 0);
}

/** "left: since 12 Apr, best 8 of 10 s". */
function nowInWords(view: ClientView, placement: HistoryPlacement, limits: Limits): string {
  const rung = view.rungs.get(placement.rungId);
  const since = `since ${shortDate(placement.from)}`;
  const side = placement.side === 'both' ? '' : `${placement.side}: `;
  if (!rung) return `${side}${since}`;
  const values = rungDays(view, rung.id)
    .filter((day) => day.date > addDays(view.asOf.date, -RECENT_DAYS))
    .flatMap((day) => day.sets)
    .filter((set) => isOfSide(set, placement.side))
    .flatMap((set) => (hasResult(set) ? [set.value] : []));
  const best = values.length === 0 ? undefined : Math.max(...values);
  const unit = MEASURE_UNITS[rung.measure];
  return best === undefined
    ? `${side}${since}, not trained in ${RECENT_DAYS} days`
    : `${side}${since}, best ${best} of ${rung.pass.target}${unit ? ` ${unit}` : ''}${shareInWords(view, rung, placement.side, limits)}`;
}

/** ", 62 % of the pass mark": the newest training day with a score; nothing without one. */
function shareInWords(view: ClientView, rung: HistoryRung, side: Side, limits: Limits): string {
  const last = scoredDays(view, rung, side, limits).at(-1);
  return last ? `, ${asPercent(last.score)} of the pass mark` : '';
}

function standingInWords(view: ClientView, placement: HistoryPlacement): string {
  const side = placement.side === 'both' ? '' : `${placement.side} side `;
  const rung = view.rungs.get(placement.rungId);
  const name = rung ? `${rung.name}, ${markInWords(toLadderRung(rung))},` : 'a rung';
  return `${side}on ${name} since ${shortDate(placement.from)}`;
}

function toLadderRung(rung: HistoryRung): LadderRung {
  return { ...rung, passSets: rung.pass.sets, passTarget: rung.pass.target };
}

/** "3 x 20 s, short hops": the pass mark first, the name without what the ladder says already. */
function rungLabel(rung: LadderRung, ladder: string): string {
  const rest = rung.name.startsWith(ladder)
    ? rung.name.slice(ladder.length).replace(/^[,\s]+/, '')
    : rung.name;
  return [markInWords(rung), rest].filter(Boolean).join(', ');
}

/** "3 x 20 s". */
function markInWords(rung: LadderRung): string {
  const unit = MEASURE_UNITS[rung.measure];
  return `${rung.passSets} x ${rung.passTarget}${unit ? ` ${unit}` : ''}`;
}

function withoutDoubles(rungs: readonly LadderRung[]): LadderRung[] {
  return [...new Map(rungs.map((rung) => [rung.id, rung])).values()];
}
