import { type Limits, limitsWith } from '#lib/checks/thresholds.ts';
import type { ClientHistory, HistoryRung } from '#lib/domain/history.ts';
import type { EditedPlan } from '#lib/planning/edited-plan.ts';
import { foreseenGoals } from '#lib/planning/foreseen-goals.ts';
import type { PartCovered } from '#lib/planning/parts-covered.ts';
import { type Projection, projectLoads, type UsualLoad } from '#lib/planning/project-loads.ts';
import { type SessionMinutes, sessionMinutes } from '#lib/planning/session-minutes.ts';
import { grouped } from './client-load.ts';
import { planDoubts } from './plan-doubts.ts';
import { shortDate } from './say-date.ts';
import { TISSUE_WORDS } from './tissue-words.ts';

export type LoadBar = {
  key: string;
  /** Shares of the height of the drawing, 0-1: up to the usual week + 2 spreads, and what lies above. */
  inside: number;
  over: number;
  printed: string;
};
export type LoadBars = {
  key: string;
  title: string;
  side: string;
  unit: string;
  bars: LoadBar[];
  /** Shares of the height; null: the usual week is not known yet. */
  band: { low: number; middle: number; high: number } | null;
  /** "usual week 640, band to 820" */
  usual: string;
  isOver: boolean;
  summary: string;
};
export type PlanWarning = { key: string; sentence: string; heavy: boolean };
export type PlanLive = {
  minutes: SessionMinutes[];
  weeks: { key: string; label: string; kind: string; sessions: string }[];
  /** Session load first, then tissues: those over usual, then the largest. */
  loads: LoadBars[];
  warnings: PlanWarning[];
  /** A foreseen load jump to accept: the largest 7-day session load, AU. */
  jumpAu: number | null;
  parts: PartCovered[];
  assumed: string;
};

const SPREADS = 2;
/** Less above the band is not seen in the printed numbers. */
const SMALLEST = 0.5;
const HEADROOM = 1.05;
const KIND_WORDS = { ordinary: '', easy: 'easy', test: 'test' } as const;

/**
 * What a plan comes to while it is written: minutes, the loads of the next four weeks against the usual week, what the
 * checks would say, and the parts it works on. `yesterday`: the last day that is over.
 */
export function planLive(asked: {
  history: ClientHistory;
  rungs: readonly HistoryRung[];
  plan: EditedPlan;
  yesterday: string;
  /** Numbers of the checks that differ from the defaults. */
  changed?: Partial<Limits>;
}): PlanLive {
  const { history, rungs, plan, yesterday } = asked;
  const limits = limitsWith(asked.changed ?? {});
  const projection = projectLoads({ history, plan, date: yesterday, rungs, limits });
  const byId = new Map(rungs.map((rung) => [rung.id, rung]));
  const jump = projection.warnings.find(({ kind }) => kind === 'load-jump');
  return {
    minutes: sessionMinutes(plan, byId),
    weeks: projection.weeks.map(({ from, kind, sessions }, index) => ({
      key: from,
      label: `${index + 1}, from ${shortDate(from)}`,
      kind: KIND_WORDS[kind],
      sessions: sessions === 1 ? '1 session' : `${sessions} sessions`,
    })),
    loads: loadBars(projection),
    warnings: warningsOf(asked, byId, { projection, limits }),
    jumpAu: jump?.weekAu ?? null,
    parts: projection.parts,
    assumed: assumedInWords(projection.assumed),
  };
}

function warningsOf(
  { history, rungs, plan }: { history: ClientHistory; rungs: readonly HistoryRung[]; plan: EditedPlan },
  byId: ReadonlyMap<string, HistoryRung>,
  { projection, limits }: { projection: Projection; limits: Limits },
): PlanWarning[] {
  const goals = foreseenGoals({ history, plan, rungs }, limits);
  return [
    ...projection.warnings.map(({ kind, sentence, level }) => ({
      key: kind,
      sentence,
      heavy: level === 'act',
    })),
    ...(goals ? [{ key: 'too-many-goals', sentence: goals, heavy: false }] : []),
    ...planDoubts(plan, byId, history).map((sentence) => ({ key: sentence, sentence, heavy: false })),
  ];
}

type Series = {
  key: string;
  title: string;
  side: string;
  unit: string;
  weeks: (number | null)[];
  usual: UsualLoad;
};

function loadBars({ session, tissues }: Projection): LoadBars[] {
  const whole = toBars({ key: 'session', title: 'Session load', side: '', unit: 'AU', ...session });
  const each = sidesTogether(
    tissues.map(({ tissue, side, weeks, usual }) => ({
      key: `${tissue}:${side}`,
      title: TISSUE_WORDS[tissue],
      side,
      unit: 'BW s',
      weeks,
      usual,
    })),
  ).sort((a, b) => largest(b) - largest(a));
  const bars = each.map(toBars);
  return [whole, ...bars.filter(({ isOver }) => isOver), ...bars.filter(({ isOver }) => !isOver)];
}

function largest({ weeks }: Series): number {
  return Math.max(0, ...weeks.map((week) => week ?? 0));
}

/** Left and right of a tissue as one where every week comes to the same. */
function sidesTogether(series: Series[]): Series[] {
  const same = (a: Series, b: Series) =>
    a.title === b.title &&
    a.weeks.every((week, index) => Math.round(week ?? 0) === Math.round(b.weeks[index] ?? 0)) &&
    Math.round(a.usual?.usual ?? -1) === Math.round(b.usual?.usual ?? -1);
  return series
    .filter(
      (one) => !(one.side === 'right' && series.some((other) => other.side === 'left' && same(other, one))),
    )
    .map((one) => {
      const both = one.side === 'left' && series.some((other) => other.side === 'right' && same(other, one));
      return both ? { ...one, side: 'left and right, each' } : one;
    });
}

function toBars({ key, title, side, unit, weeks, usual }: Series): LoadBars {
  const high = usual ? usual.usual + SPREADS * usual.spread : undefined;
  const top = Math.max(1, high ?? 0, ...weeks.map((week) => week ?? 0)) * HEADROOM;
  const bars = weeks.map((week, index): LoadBar => {
    const above = high === undefined || week === null ? 0 : week - high;
    const over = above < SMALLEST ? 0 : above;
    return {
      key: `${key} ${index}`,
      inside: ((week ?? 0) - over) / top,
      over: over / top,
      printed: week === null ? 'unknown' : grouped(week),
    };
  });
  const said =
    usual && high !== undefined
      ? `usual week ${grouped(usual.usual)}, band to ${grouped(high)} ${unit}`
      : `usual week not known yet, ${unit}`;
  const name = side ? `${title}, ${side}` : title;
  return {
    key,
    title,
    side,
    unit,
    bars,
    band:
      usual && high !== undefined
        ? {
            low: Math.max(0, usual.usual - SPREADS * usual.spread) / top,
            middle: usual.usual / top,
            high: high / top,
          }
        : null,
    usual: said,
    isOver: bars.some(({ over }) => over > 0),
    summary: `${name}: weeks 1 to 4 ${bars.map(({ printed }) => printed).join(', ')}; ${said}.`,
  };
}

function assumedInWords({ effort, pace }: Projection['assumed']): string {
  if (effort === null || pace === null) {
    return 'Session load is not foreseen: no check-in tells how hard and how long sessions are.';
  }
  return `Taken: effort ${Math.round(effort * 10) / 10} of 10 and ${Math.round(pace * 10) / 10} times the estimated minutes, as usual here, and all done as planned. Nothing here predicts what will hurt.`;
}
