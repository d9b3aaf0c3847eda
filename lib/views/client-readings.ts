import { loadsOf } from '#lib/checks/load-series.ts';
import type { ClientView } from '#lib/checks/types.ts';
import { totalUpTo } from '#lib/checks/usual-week.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { BLOCK_DAYS, type ClientAxis, PAGE_DAYS } from './client-axis.ts';
import type { LadderPanel } from './client-ladders.ts';
import { grouped, type LoadPanel } from './client-load.ts';
import type { PainView } from './client-pain.ts';
import type { PairPanel } from './client-pairs.ts';
import type { WindowPanel } from './client-window.ts';
import { datedDay } from './say-date.ts';

/** What every chart says of each of the 84 days, by the key of its panel. An empty text: it says nothing of that day. */
export type Readings = {
  /** "Tue 3 Nov, trained". */
  days: string[];
  byPanel: Record<string, string[]>;
};

type Panels = {
  ladders: readonly LadderPanel[];
  load: readonly LoadPanel[];
  pain: PainView;
  pairs: readonly PairPanel[];
  windows: readonly WindowPanel[];
};

/** The day under the reading line, on every chart at once. Unknown is said, never a zero. */
export function clientReadings(view: ClientView, axis: ClientAxis, panels: Panels): Readings {
  const dates = Array.from({ length: PAGE_DAYS }, (_, at) => addDays(axis.from, at));
  const each = (say: (at: number, date: string) => string) => dates.map((date, at) => say(at, date));
  return {
    days: each((at, date) => `${datedDay(date, axis.to)}, ${axis.ribbon[at]?.state ?? 'unknown'}`),
    byPanel: {
      ...keyed(panels.ladders, (ladder) => [ladder.id, each((at) => onLadder(ladder, at))]),
      ...keyed(panels.load, (panel) => [panel.key, loadOf(view, dates, panel)]),
      pain: each((at) => painOn(panels.pain, at)),
      ...keyed(panels.pairs, (panel) => [panel.rungId, each((at) => pairOn(panel, at))]),
      ...keyed(panels.windows, (panel) => [panel.key, each((at) => windowOn(panel, at))]),
    },
  };
}

function keyed<One>(all: readonly One[], entry: (one: One) => [string, string[]]): Record<string, string[]> {
  return Object.fromEntries(all.map(entry));
}

/** The rung of each side on that day, and whether its pass mark was met. */
function onLadder({ paths, rungs }: LadderPanel, at: number): string {
  return paths
    .flatMap((path) => {
      const step = path.steps.filter((one) => one.at <= at).at(-1);
      const rung = step && rungs[Math.round(step.level)];
      if (!rung) return [];
      const met = path.passes.some((pass) => Math.floor(pass.at) === at) ? ', pass mark met' : '';
      return [`${path.side === 'both' ? '' : `${path.side}: `}${rung.name}${met}`];
    })
    .join('; ');
}

function loadOf(view: ClientView, dates: readonly string[], { key, unit }: LoadPanel): string[] {
  const { session, tissues } = loadsOf(view);
  const series = key === 'session' ? session : [...tissues].find(([name]) => name === key)?.[1];
  const short = unit.split(' in ')[0] ?? unit;
  return dates.map((date) => {
    const index = view.indexOf(date);
    if (!series || index === -1 || series.known[index] !== 1) return 'unknown';
    const week = totalUpTo(series, index, BLOCK_DAYS);
    const atLeast = week.known < BLOCK_DAYS ? 'at least ' : '';
    return `${grouped(series.values[index] ?? 0)} ${short}; 7 days ${atLeast}${grouped(week.total)}`;
  });
}

function painOn({ lines }: PainView, at: number): string {
  return lines
    .flatMap((line) => {
      const point = line.points.find((one) => Math.floor(one.at) === at);
      if (!point || point.worst === null) return [];
      return [`${line.place} ${point.worst}${point.morning === null ? '' : `, morning ${point.morning}`}`];
    })
    .join('; ');
}

function pairOn({ pairs, unit }: PairPanel, at: number): string {
  const pair = pairs.find((one) => Math.floor(one.at) === at);
  return pair ? `left ${pair.left}, right ${pair.right}${unit ? ` ${unit}` : ''}` : '';
}

function windowOn({ heel, toe }: WindowPanel, at: number): string {
  const on = (points: WindowPanel['heel']) => points.find((one) => Math.floor(one.at) === at)?.seconds;
  const [heels, toes] = [on(heel), on(toe)];
  return [heels === undefined ? '' : `heel pull ${heels} s`, toes === undefined ? '' : `toe pull ${toes} s`]
    .filter((text) => text !== '')
    .join(', ');
}
