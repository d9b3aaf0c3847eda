import type { HistoryRung } from '#lib/domain/history.ts';
import { libraryHistoryRung } from '#lib/library/history-rung.ts';
import { STARTER_LIBRARY } from '#lib/library/library.ts';
import type { Draws } from './random.ts';

/** One ladder of a client with its hidden truth. */
export type Drill = {
  ladderKey: string;
  rungs: HistoryRung[];
  /** Position of the rung stood on. */
  at: number;
  /** Day on which the client came to it. */
  since: number;
  /** What the client can do, as a part of the target, at `since`, and the gain a day. */
  start: number;
  gain: number;
  sets: number;
  sides: ('both' | 'left' | 'right')[];
};

/** The ladders that a client may train; heel and toe pulls come together, as a window needs both. */
const CHOICES: { ladders: string[]; from: [number, number] }[] = [
  { ladders: ['H3', 'H4'], from: [3, 5] },
  { ladders: ['PU'], from: [3, 7] },
  { ladders: ['U1'], from: [2, 7] },
  { ladders: ['PL', 'LN'], from: [2, 4] },
  { ladders: ['LV'], from: [2, 5] },
  { ladders: ['OA'], from: [2, 6] },
];

function makeDrill(ladderKey: string, first: number): Drill {
  const ladder = STARTER_LIBRARY.ladders.find((one) => one.key === ladderKey);
  // Generated clients send no films.
  const rungs = ladder
    ? ladder.rungs.map((rung) => ({ ...libraryHistoryRung(ladder, rung), needsFilm: false }))
    : [];
  const at = Math.min(first, rungs.length) - 1;
  const each = rungs[at]?.eachSide && !rungs[at]?.eachIsLeg;
  return {
    ladderKey,
    rungs,
    at,
    since: 0,
    start: 0,
    gain: 0,
    sets: 0,
    sides: each ? ['left', 'right'] : ['both'],
  };
}

/** Three or four choices; `needed` ladders are always among them. */
export function makeDrills(needed: string[], d: Draws): Drill[] {
  const order = [...CHOICES].sort(() => d.uniform() - 0.5);
  const must = order.filter((choice) => choice.ladders.some((key) => needed.includes(key)));
  const rest = order.filter((choice) => !must.includes(choice));
  return [...must, ...rest].slice(0, Math.max(d.int(3, 4), must.length)).flatMap((choice) => {
    const first = d.int(...choice.from);
    return choice.ladders.slice(0, choice.ladders[0] === 'PL' ? 1 : 2).map((key) => makeDrill(key, first));
  });
}

/** Puts a drill on its present rung at `day`: 50-80 % of the target, reaching 1.1 after the usual weeks times the pace. */
export function settle(drill: Drill, day: number, pace: number, d: Draws): void {
  const rung = drill.rungs[drill.at];
  if (!rung) return;
  drill.since = day;
  drill.start = d.uniform(0.5, 0.8);
  drill.gain = (1.1 - drill.start) / (rung.usualWeeks * 7 * pace * Math.exp(d.normal(0, 0.35)));
  drill.sets = rung.pass.sets;
}
