import type { ClientHistory, HistoryCheckIn, HistoryRung, HistorySet } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { aHistory, aPlan, aPlanItem, aRung, day } from '#tests/fixtures/history-builders.ts';

/** What every random client is made of; stories bend it. Numbers are plain, so that they shrink. */
export type Base = {
  weeks: number;
  zone: string;
  under18: boolean;
  bodyMassKg: number | null;
  toldWeekAu: number | null;
  /** Training days a week, and whether sessions A and B take turns. */
  perWeek: number;
  twoSessions: boolean;
  /** How many of the ladders the client trains. */
  ladders: number;
  /** What the plan asks, as a share of the pass mark, and what the client reaches of that. */
  asked: number;
  reached: number;
  /** Growth of that share a week. */
  growth: number;
  effort: number;
  minutes: number;
  /** Days without training are told as rest. */
  tellsRest: boolean;
  /** Names the numbers that look random: same seed, same client. */
  seed: number;
};

/** Zones without a clock change, so that whole days are 24 h everywhere, from far behind UTC to far ahead of it. */
export const ZONES = ['America/Bogota', 'UTC', 'Asia/Kathmandu', 'Pacific/Kiritimati'] as const;

const LADDERS: Partial<HistoryRung>[] = [
  { ladderId: 'pull', ladder: 'Pull-up', family: 'bent-arm-pull' },
  {
    ladderId: 'dip',
    ladder: 'Dip',
    family: 'bent-arm-push',
    weights: { 'elbow-straightening': 0.7, 'wrist-back': 0.5 },
  },
  {
    ladderId: 'heel',
    ladder: 'Heel pull',
    part: 'Over-balance',
    family: 'balance',
    measure: 'hold',
    weights: { 'wrist-back': 0.6, 'shoulder-overhead': 0.5 },
  },
  {
    ladderId: 'toe',
    ladder: 'Toe pull',
    part: 'Under-balance',
    family: 'balance',
    measure: 'hold',
    weights: { 'wrist-back': 0.4, 'shoulder-overhead': 0.6 },
  },
  {
    ladderId: 'one-arm',
    ladder: 'One-arm handstand',
    family: 'balance',
    measure: 'hold',
    eachSide: true,
    helpingShare: 0.1,
    weights: { 'wrist-back': 0.9, 'shoulder-overhead': 0.8 },
    faults: ['hips-turn', 'came-off'],
  },
  {
    ladderId: 'hang',
    ladder: 'Front lever',
    family: 'straight-arm-pull',
    measure: 'hold',
    weights: { 'wrist-forward': 0.6, 'upper-back': 0.8 },
  },
  {
    ladderId: 'lean',
    ladder: 'Planche',
    family: 'straight-arm-push',
    measure: 'hold',
    weights: { 'wrist-back': 0.9, 'shoulder-forward': 0.9 },
    needsFilm: true,
  },
  {
    ladderId: 'split',
    ladder: 'Split',
    family: 'mobility',
    measure: 'range-up',
    eachSide: true,
    share: null,
    weights: { hamstrings: 0.4 },
  },
  {
    ladderId: 'kick',
    ladder: 'Kick up',
    family: 'balance',
    measure: 'made-tried',
    eachSide: true,
    eachIsLeg: true,
    weights: { 'shoulder-overhead': 0.4, 'hip-flexors': 0.3 },
  },
  {
    ladderId: 'pike',
    ladder: 'Pike',
    family: 'mobility',
    measure: 'range-down',
    share: null,
    weights: { hamstrings: 0.3, 'low-back': 0.4 },
  },
];

/** Two rungs of every ladder; the second is clearly heavier. */
export const RUNGS: readonly HistoryRung[] = LADDERS.flatMap((ladder) => [
  rungOf(ladder, 1),
  rungOf(ladder, 2),
]);

function rungOf(ladder: Partial<HistoryRung>, position: 1 | 2): HistoryRung {
  const { ladderId = '', ladder: name = '', measure = 'reps' } = ladder;
  const inSeconds = measure === 'hold';
  const tries = measure === 'made-tried' ? 10 : null;
  return aRung({
    ...ladder,
    id: `${ladderId}-${position}`,
    position,
    name: `${name}, ${position === 1 ? 'short' : 'long'}`,
    pass: { sets: tries ? 1 : 3, target: tries ? 8 : inSeconds ? 20 : 10, days: 2, tries },
    secondsPerRep: inSeconds || measure.startsWith('range') ? null : 4,
    share: ladder.share === null ? null : position === 1 ? 0.8 : 1,
    usualWeeks: 4,
  });
}

/** 0-1, the same for the same numbers. */
export function noise(...parts: number[]): number {
  let hash = 2_166_136_261;
  for (const part of parts) hash = Math.imul(hash ^ (part + 0x9e37), 16_777_619) ^ (hash >>> 13);
  return ((hash >>> 0) % 10_007) / 10_007;
}

export function ladderIds({ ladders }: Base): string[] {
  return LADDERS.slice(0, ladders).map((ladder) => ladder.ladderId ?? '');
}

/** The rungs a client of this base trains in a session: the first of each ladder. */
export function rungsIn(base: Base, session: string): HistoryRung[] {
  const first = RUNGS.filter((rung) => rung.position === 1).slice(0, base.ladders);
  return base.twoSessions ? first.filter((_, at) => (at % 2 === 0) === (session === 'A')) : first;
}

export function sidesOf(rung: HistoryRung): Side[] {
  return rung.eachSide ? ['left', 'right'] : ['both'];
}

export function askedOf(rung: HistoryRung, share: number): number {
  const asked = rung.measure === 'range-down' ? rung.pass.target / share : rung.pass.target * share;
  return Math.max(1, Math.round(asked));
}

/** A client with plan, placements and no check-ins. */
export function emptyHistory(base: Base): ClientHistory {
  const sessions = base.twoSessions ? ['A', 'B'] : ['A'];
  const items = sessions.flatMap((session) =>
    rungsIn(base, session).flatMap((rung) =>
      sidesOf(rung).map((side) =>
        aPlanItem({
          session,
          rungId: rung.id,
          side,
          sets: rung.pass.sets,
          target: askedOf(rung, base.asked),
        }),
      ),
    ),
  );
  const [first] = rungsIn(base, 'A');
  // The first drill of A comes back in B, with fewer sets.
  if (base.twoSessions && first)
    items.push(aPlanItem({ session: 'B', rungId: first.id, sets: 2, target: askedOf(first, base.asked) }));
  const { zone, under18, bodyMassKg, toldWeekAu } = base;
  return aHistory({
    client: { zone, under18, bodyMassKg, toldWeekAu },
    rungs: RUNGS.filter((rung) => ladderIds(base).includes(rung.ladderId)),
    plans: [aPlan({ sessionsPerWeek: base.perWeek, items })],
    placements: ladderIds(base).map((ladderId) => ({
      ladderId,
      side: 'both' as const,
      rungId: `${ladderId}-1`,
      from: day(0),
    })),
    seen: [`${day(base.weeks * 7 - 2)}T12:00:00.000Z`],
  });
}

/** What this client does on a training day when nothing is the matter. */
export function usualCheckIn(base: Base, at: number, session: string): HistoryCheckIn {
  const date = day(at);
  const sets = rungsIn(base, session).flatMap((rung, drill) =>
    sidesOf(rung).flatMap((side, which) =>
      Array.from({ length: rung.pass.sets }, (_, index) =>
        setOf(base, rung, { at, side, index, drill, which }),
      ),
    ),
  );
  return {
    id: `check-in-${date}-${session}`,
    date,
    zone: base.zone,
    sentAt: `${date}T${String(8 + Math.floor(noise(base.seed, at) * 12)).padStart(2, '0')}:40:00.000Z`,
    kind: 'training',
    session,
    effort: Math.min(10, base.effort + Math.floor(noise(base.seed, at, 1) * 3)),
    minutes: base.minutes + Math.floor(noise(base.seed, at, 2) * 4) * 5,
    ground: 'hard-floor',
    sleepHours: null,
    nothingHurts: true,
    sets,
    pain: [],
    dangerSigns: [],
    words: '',
  };
}

type Place = { at: number; side: Side; index: number; drill: number; which: number };

function setOf(base: Base, rung: HistoryRung, place: Place): HistorySet {
  const { at, side, index, drill, which } = place;
  const planned = askedOf(rung, base.asked);
  const share =
    base.reached + (base.growth * at) / 7 + (noise(base.seed, at, index, drill, which) - 0.5) * 0.2;
  const value = Math.max(0, Math.round(rung.measure === 'range-down' ? planned / share : planned * share));
  const tries = rung.measure === 'made-tried';
  return {
    rungId: rung.id,
    side,
    index,
    planned: tries ? 10 : planned,
    value: tries ? Math.min(10, value) : value,
    tried: tries ? 10 : null,
    how: 'typed',
    clean: noise(base.seed, at, index, drill, which, 3) > 0.1,
    faults: [],
    support: null,
    addedKg: null,
  };
}
