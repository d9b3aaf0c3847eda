import type {
  ClientHistory,
  HistoryCheckIn,
  HistoryPain,
  HistoryPlacement,
  HistoryPlan,
  HistorySet,
} from '#lib/domain/history.ts';
import { addDays } from './calendar.ts';
import { type Drill, makeDrills, settle } from './client-drills.ts';
import { type Draws, draws } from './random.ts';
import type { World } from './worlds.ts';

/** First day of every generated history; nothing depends on the date itself. */
export const FIRST_DAY = '2026-01-05';

export type Made = {
  history: ClientHistory;
  /** Day number of the onset; for a clean client undefined. */
  onset: number | undefined;
  /** Ladder that the truth is about. */
  ladder: string | undefined;
  days: number;
};

const NEEDED: Record<string, string[]> = {
  stall: ['PU'],
  side: ['OA'],
  fault: ['OA'],
  window: ['H3'],
  'too-little-time': ['LV'],
  slipping: ['U1'],
  stacked: ['PU', 'U1', 'LV'],
  'jump-one-ladder': ['PU'],
  'after-ground': ['H3'],
};

/** Two hard days, a day between, two hard days, and what a hard day has more of. */
const PAIRED_DAYS = [1, 2, 4, 5];
const HARD_DAY = 1.5;

const TWINS: Readonly<Record<string, string>> = { H3: 'H4', H4: 'H3' };

type State = {
  d: Draws;
  world: World;
  planted: string | undefined;
  onset: number;
  drills: Drill[];
  target: Drill | undefined;
  cv: number;
  pace: number;
  effort: number;
  minutes: number;
  mornings: number;
  region: 'wrist-back' | 'elbow-inner' | 'shoulder-front';
  side: 'left' | 'right';
  weekdays: number[];
  plans: HistoryPlan[];
  placements: HistoryPlacement[];
  passed: Map<string, number>;
};

/** What a planted condition does to the dose of a drill on a day. */
function doseFactor(s: State, drill: Drill, day: number): number {
  if (day < s.onset) return 1;
  const since = day - s.onset;
  if (s.planted === 'jump') return since < 21 ? 1.8 : 1;
  if (s.planted === 'jump-one-ladder') return drill === s.target && since < 21 ? 2 : 1;
  if (s.planted === 'stacked') return ['PU', 'U1', 'LV'].includes(drill.ladderKey) && since < 28 ? 1.5 : 1;
  if (s.planted === 'hard-days') return since < 28 ? HARD_DAY : 1;
  return 1;
}

/** Learning stops, and 28 % of what the log could show is lost within three weeks: results over the target are not written down. */
function fallen(drill: Drill, onset: number, since: number): number {
  const shown = Math.min(drill.start + drill.gain * (onset - drill.since), 1);
  return shown * (1 - 0.28 * Math.min(1, since / 21));
}

/** The hidden ability of a side on a day, as a part of the target. */
function ability(s: State, drill: Drill, side: string, day: number): number {
  const grown = Math.min(drill.start + drill.gain * (day - drill.since), 1.25);
  const hit = drill === s.target && day >= s.onset;
  const since = day - s.onset;
  let part = grown;
  if (hit && s.planted === 'stall') part = 0.6 + 0.35 * ((s.onset % 7) / 7);
  if (hit && s.planted === 'slipping') part = fallen(drill, s.onset, since);
  if (hit && s.planted === 'step') part = Math.max(grown, 1.12);
  if (hit && s.planted === 'side' && side === s.side)
    part = Math.min(grown, 0.95) * (0.76 + 0.12 * ((s.onset % 5) / 5));
  if (hit && s.planted === 'side' && side !== s.side) part = Math.min(grown, 0.97);
  if (s.planted === 'window' && day >= s.onset && drill.ladderKey === 'H4' && s.target)
    part = 0.5 * ability(s, s.target, side, day);
  return part;
}

function makeSet(
  s: State,
  drill: Drill,
  side: HistorySet['side'],
  index: number,
  shape: number,
  day: number,
): HistorySet {
  const rung = drill.rungs[drill.at];
  if (!rung) throw new Error('no rung');
  const could = rung.pass.target * shape * (1 - 0.025 * index) * (1 + s.d.normal(0, s.cv / 250));
  const whole = rung.measure === 'reps' ? Math.floor(could) : Math.round(could);
  const value = Math.max(1, Math.min(whole, rung.pass.target));
  const faulty = s.planted === 'fault' && day >= s.onset && drill === s.target;
  const pFault = faulty ? (side === s.side ? 0.5 : 0.06) : 0.04;
  const faults = s.d.chance(pFault) && drill.ladderKey === 'OA' ? (['hips-turn'] as const) : [];
  return {
    rungId: rung.id,
    side,
    index,
    planned: rung.pass.target,
    value: rung.measure === 'made-tried' ? Math.min(value, rung.pass.tries ?? value) : value,
    tried: rung.measure === 'made-tried' ? rung.pass.tries : null,
    how: 'typed',
    clean: value >= rung.pass.target * 0.4 && faults.length === 0,
    faults: [...faults],
    support: null,
    addedKg: null,
  };
}

function trains(s: State, drill: Drill, day: number): boolean {
  if (s.planted !== 'too-little-time' || drill !== s.target || day < s.onset) return s.d.chance(0.97);
  return s.d.chance(0.22);
}

function setsOf(s: State, day: number): HistorySet[] {
  const sets: HistorySet[] = [];
  for (const drill of s.drills) {
    if (!trains(s, drill, day)) continue;
    const form = 1 + s.d.normal(0, s.cv / 100);
    const count = Math.max(1, Math.round(drill.sets * doseFactor(s, drill, day)));
    for (const side of drill.sides) {
      const shape = ability(s, drill, side, day) * (form + s.d.normal(0, s.cv / 300));
      for (let i = 0; i < count; i += 1) sets.push(makeSet(s, drill, side, i, shape, day));
    }
  }
  return sets;
}

/** The wrist of the soft-ground case hurts for three days after it. */
function painOf(s: State, day: number, softSince: number | undefined): { during: number; morning: number } {
  const harmless = s.d.chance(s.world.soreness) ? s.d.int(1, 2) : 0;
  const since = day - s.onset;
  if (day < s.onset || !s.planted)
    return { during: harmless, morning: s.d.chance(s.world.soreness / 2) ? 1 : 0 };
  const jitter = s.d.pick([-1, 0, 0, 0, 1]);
  if (s.planted === 'pain-slow') {
    const level = Math.min(5, Math.max(0, Math.round(since / 7 + 1 + jitter * 0.6)));
    return { during: level, morning: Math.max(0, level - 1) };
  }
  if (s.planted === 'pain-sudden')
    return { during: Math.max(2, 4 + jitter), morning: Math.max(0, 2 + jitter) };
  if (s.planted === 'pain-mornings') return { during: harmless, morning: Math.max(1, 3 + jitter) };
  if (s.planted === 'pain-lingering') return { during: Math.min(4, Math.max(2, 3 + jitter)), morning: 1 };
  if (s.planted === 'pain-six' && since < 8) return { during: s.d.int(6, 7), morning: 4 };
  if (s.planted === 'after-ground' && softSince !== undefined && day - softSince <= 4)
    return { during: s.d.int(3, 4), morning: 2 };
  return { during: harmless, morning: 0 };
}

function painScores(s: State, level: { during: number; morning: number }): HistoryPain[] {
  const base = {
    region: s.planted === 'after-ground' ? ('wrist-back' as const) : s.region,
    side: s.side,
    kind: 'joint' as const,
    usual: null,
  };
  const scores: HistoryPain[] = [];
  if (level.during > 0) scores.push({ ...base, moment: 'during', value: level.during });
  if (s.d.chance(s.mornings)) scores.push({ ...base, moment: 'morning', value: level.morning });
  return scores;
}

function sessionFactor(s: State, day: number): number {
  if (day < s.onset) return 1;
  if (s.planted === 'jump' && day - s.onset < 21) return 1.7;
  if (s.planted === 'hard-days' && day - s.onset < 28) return HARD_DAY;
  return 1;
}

function checkIn(s: State, day: number, soft: boolean, softSince: number | undefined): HistoryCheckIn {
  const date = addDays(FIRST_DAY, day);
  const factor = sessionFactor(s, day);
  const pain = painScores(s, painOf(s, day, softSince));
  return {
    id: `c${day}`,
    date,
    zone: 'Europe/Berlin',
    sentAt: `${date}T19:00:00.000Z`,
    kind: 'training',
    session: 'A',
    effort: Math.max(2, Math.min(10, Math.round(s.effort * Math.sqrt(factor) + s.d.normal(0, 0.7)))),
    minutes: Math.round(Math.max(15, s.minutes * factor * (1 + s.d.normal(0, 0.12)))),
    ground: soft ? 'grass' : 'hard-floor',
    sleepHours: null,
    nothingHurts: pain.every((score) => score.value === 0),
    sets: setsOf(s, day),
    pain,
    dangerSigns: [],
    words: '',
  };
}

function planNow(s: State, day: number): void {
  const last = s.plans.at(-1);
  const from = addDays(FIRST_DAY, day);
  const items = s.drills.flatMap((drill) =>
    drill.sides.map((side) => ({
      session: 'A',
      rungId: drill.rungs[drill.at]?.id ?? '',
      side,
      sets: drill.sets,
      target: drill.rungs[drill.at]?.pass.target ?? null,
      minutes: null,
      timesPerWeek: s.weekdays.length,
    })),
  );
  if (last?.from === from) s.plans.pop();
  s.plans.push({
    version: s.plans.length + 1,
    from,
    until: null,
    sessionsPerWeek: s.weekdays.length,
    items,
    easyWeeks: [],
    testWeeks: [],
    acceptedWeekAu: null,
    skillsInFocus: ['Handstand'],
  });
}

function place(s: State, drill: Drill, day: number): void {
  settle(drill, day, s.pace, s.d);
  // The two edges of a balance window come on together in a client with whom nothing is wrong.
  const twin = s.drills.find(
    (one) => one.ladderKey === TWINS[drill.ladderKey] && one.at === drill.at && one.gain > 0,
  );
  if (twin) Object.assign(drill, { start: twin.start, gain: twin.gain, since: twin.since });
  for (const side of drill.sides) {
    const rungId = drill.rungs[drill.at]?.id ?? '';
    s.placements.push({ ladderId: drill.ladderKey, side, rungId, from: addDays(FIRST_DAY, day) });
  }
}

/** The coach of the generator moves a client up when the pass was met on the asked days, a few days later. */
function coachLooks(s: State, day: number, made: HistoryCheckIn): void {
  for (const drill of s.drills) {
    const rung = drill.rungs[drill.at];
    if (!rung || (drill === s.target && day >= s.onset)) continue;
    const sides = drill.sides.map((side) =>
      made.sets.filter((set) => set.rungId === rung.id && set.side === side),
    );
    const met = sides.every(
      (sets) =>
        sets.filter((set) => set.clean && (set.value ?? 0) >= rung.pass.target).length >= rung.pass.sets,
    );
    const count = met ? (s.passed.get(rung.id) ?? 0) + 1 : (s.passed.get(rung.id) ?? 0);
    s.passed.set(rung.id, count);
    if (count < rung.pass.days || drill.at + 1 >= drill.rungs.length) continue;
    const next = drill.rungs[drill.at + 1];
    if (next?.measure.startsWith('range')) continue;
    drill.at += 1;
    const each = next?.eachSide && !next.eachIsLeg;
    drill.sides = each ? ['left', 'right'] : ['both'];
    place(s, drill, day + 1);
    planNow(s, day + 1);
  }
}

function isTrainingDay(s: State, day: number): boolean {
  const since = day - s.onset;
  if (s.planted === 'quiet' && since >= 0) return false;
  if (s.planted === 'return' && since < 0 && since >= -24) return false;
  if (s.planted === 'no-rest' && since >= 0 && since < 30) return true;
  if (s.planted === 'monotony' && since >= 0 && since < 28) return day % 7 !== s.weekdays[0];
  if (s.planted === 'hard-days' && since >= 0 && since < 28) return PAIRED_DAYS.includes(day % 7);
  const planned = s.weekdays.includes(day % 7);
  if (s.planted === 'fading' && since >= 0) return planned && s.d.chance(0.3);
  if (s.planted === 'return' && since >= 0) return planned;
  const [skip] = s.world.skips;
  const skips = s.d.chance(s.d.uniform(skip, s.world.skips[1]));
  if (planned) return !skips;
  return s.d.chance(s.d.uniform(...s.world.moves) * 0.15);
}

/** One client of a world: `days` of history, clean or with one planted condition from its onset. */
export function makeClient(world: World, planted: string | undefined, seed: number, days: number): Made {
  const d = draws(seed * 2654435761 + 17);
  const onset = planted ? d.int(Math.round(days * 0.55), Math.round(days * 0.7)) : Number.POSITIVE_INFINITY;
  const perWeek = d.int(...world.daysPerWeek);
  const drills = makeDrills(planted ? (NEEDED[planted] ?? []) : [], d);
  const wanted = planted ? (NEEDED[planted] ?? [])[0] : undefined;
  const s: State = {
    d,
    world,
    planted,
    onset,
    drills,
    target: planted ? (drills.find((drill) => drill.ladderKey === wanted) ?? drills[0]) : undefined,
    cv: d.uniform(...world.cv),
    pace: d.uniform(...world.pace),
    effort: d.uniform(5, 7),
    minutes: d.uniform(40, 70),
    mornings: d.uniform(...world.mornings),
    region: d.pick(['wrist-back', 'elbow-inner', 'shoulder-front'] as const),
    side: d.pick(['left', 'right'] as const),
    weekdays: [...Array(7).keys()].sort(() => d.uniform() - 0.5).slice(0, perWeek),
    plans: [],
    placements: [],
    passed: new Map(),
  };
  for (const drill of s.drills) place(s, drill, 0);
  planNow(s, 0);
  const checkIns: HistoryCheckIn[] = [];
  const forgets = d.uniform(...world.forgets);
  const absent =
    planted === 'return'
      ? [
          {
            from: addDays(FIRST_DAY, onset - 24),
            to: addDays(FIRST_DAY, onset - 1),
            kind: 'holiday' as const,
          },
        ]
      : [];
  let softSince: number | undefined;
  for (let day = 0; day < days; day += 1) {
    if (day === onset && s.target && planted !== 'step' && s.target.since < onset - 60)
      settleTarget(s, onset);
    if (day === onset && planted === 'window') sameEdges(s, onset);
    if (!isTrainingDay(s, day)) continue;
    const soft =
      planted === 'after-ground' && day >= onset && (softSince === undefined || day - softSince > 12);
    if (soft) softSince = day;
    const made = checkIn(s, day, soft, softSince);
    if (!d.chance(forgets)) checkIns.push(made);
    coachLooks(s, day, made);
  }
  return {
    history: {
      formatVersion: 1,
      client: {
        id: `${world.name}-${planted ?? 'clean'}-${seed}`,
        name: '',
        zone: 'Europe/Berlin',
        standing: 'in-training',
        invitedAt: `${FIRST_DAY}T08:00:00.000Z`,
        joinedAt: `${FIRST_DAY}T09:00:00.000Z`,
        under18: false,
        bodyMassKg: 70,
        toldWeekAu: null,
        intakePain: [],
      },
      rungs: s.drills.flatMap((drill) => drill.rungs),
      plans: s.plans,
      placements: s.placements,
      absences: absent,
      checkIns,
      questions: [],
      limits: [],
      steps: [],
      seen: checkIns.map((one) => one.sentAt),
      clinicianWords: [],
    },
    onset: planted ? onset : undefined,
    ladder: s.target?.ladderKey,
    days,
  };
}

/** Both edges on the same kind of rung: only then do they compare. */
function sameEdges(s: State, onset: number): void {
  const heel = s.drills.find((one) => one.ladderKey === 'H3');
  const toe = s.drills.find((one) => one.ladderKey === 'H4');
  if (!heel || !toe || heel.at === toe.at) return;
  toe.at = heel.at;
  place(s, toe, onset);
  planNow(s, onset);
}

/** A stall or a gap begins on a rung that is still being learned: the target stands at 70-90 % at the onset. */
function settleTarget(s: State, onset: number): void {
  if (!s.target) return;
  s.target.start = s.d.uniform(0.7, 0.9);
  s.target.gain = 0.0015;
  s.target.since = onset;
}
