import type { HistorySet } from '#lib/domain/history.ts';
import type { Fault } from '#lib/domain/vocabulary.ts';
import { addDays, demoDate, onWeekday } from '../calendar.ts';
import { finish } from '../finish.ts';
import { type DemoClient, type Life, type PlanItem, startLife, type Training } from '../life.ts';
import { did, even, pain } from '../work.ts';

const DAYS = [1, 2, 4, 6];
const WRIST = ['wrist-back', 'left'] as const;
/** Mean seconds of each one-arm day of weeks 12 to 15, right and left. */
const RIGHT = [19, 20, 18, 21, 20, 22, 21, 20, 21, 20];
const LEFT = [14, 15, 13, 15, 16, 15, 14, 15, 15, 14];

/** A former gymnast on the one-arm handstand, with a left wrist that was sore before the start. */
export function ignacio(today: string): DemoClient {
  const life = startLife(today, {
    slug: 'ignacio',
    name: 'Ignacio Mamani Quispe',
    zone: 'America/La_Paz',
    goal: 'One-arm handstand, five seconds on each side.',
    goalSkills: ['One-arm handstand'],
    birthYear: Number(today.slice(0, 4)) - 29,
    bodyMassKg: 68,
    week: { days: 4, minutes: 60, effort: 6 },
    joined: demoDate(today, 1, 1),
    intakePain: [{ region: 'wrist-back', side: 'left', value: 3, sinceWeeks: 9 }],
    note: 'Gymnast until 21. Wants numbers and film marks.',
    answers: {
      training: 'four sessions of 60 minutes',
      kit: 'hard floor, blocks, low bars, scale',
      health: 'left wrist sore for two months',
    },
  });
  story(life);
  for (let week = 1; week <= 26; week++) {
    for (const [turn, day] of DAYS.entries()) {
      life.train(life.on(week, day), dayOf(week, turn));
    }
  }
  life.rest(life.on(20, 7), {
    pain: [pain(WRIST, 'morning', 4, false), pain(WRIST, 'today', 4, false)],
    words: 'Handstands on the grass yesterday with a friend.',
  });
  life.seenBetween(life.on(1, 1), life.on(26, 7), 3);
  return finish(life);
}

function dayOf(week: number, turn: number): Training {
  const done: Training = {
    session: turn % 2 === 0 ? 'A' : 'B',
    effort: 7,
    minutes: 58 + ((week + turn) % 4),
    work: turn % 2 === 0 ? oneArm(week, turn / 2) : twoArms(week, turn),
  };
  const value = wrist(week, turn);
  if (value > 0) done.pain = [pain(WRIST, 'during', value)];
  if (week === 20 && turn === 3) return { ...done, ground: 'grass', effort: 6 };
  return done;
}

function wrist(week: number, turn: number): number {
  if (week <= 5) return [3, 3, 4, 3][turn] ?? 3;
  if (week <= 8) return 2;
  if (week === 21) return [3, 2, 1, 1][turn] ?? 1;
  return 1;
}

function oneArm(week: number, half: number): HistorySet[][] {
  const both = (key: string, value: number) =>
    even(key, value, { side: 'right' }).concat(even(key, value, { side: 'left' }));
  if (week <= 8) {
    return [
      even('OA.3', 8, { side: 'right' }),
      even('OA.3', 8, { side: 'left', support: 'parallel-bars' }),
      even('W1.5', 7),
    ];
  }
  if (week <= 11) return [both('OA.4', 9), even('H6.5', 26)];
  if (week <= 16 && (week < 16 || half < 0)) {
    const place = (week - 12) * 2 + half;
    return [
      paired('OA.7', RIGHT[place] ?? 20, 'right'),
      paired('OA.7', LEFT[place] ?? 15, 'left'),
      even('H6.5', 28),
    ];
  }
  if (week <= 20) return [fingers(week, half, 'right'), fingers(week, half, 'left'), even('H6.5', 28)];
  const [rung, seconds] = week >= 26 ? (['OA.7', 12] as const) : (['OA.6', week >= 24 ? 10 : 9] as const);
  return [even(rung, seconds, { side: 'right' }), even(rung, seconds, { side: 'left' }), even('H6.5', 29)];
}

/** Three sets around a mean, never reaching the target on both sides. */
function paired(key: string, mean: number, side: 'left' | 'right'): HistorySet[] {
  return did(key, [mean + 1, mean, mean - 1], { side, planned: null });
}

/** Weeks 16 to 20, five fingers: the hips turn on most sets of the left, hardly on the right. */
function fingers(week: number, half: number, side: 'left' | 'right'): HistorySet[] {
  const turned: Partial<Record<number, Fault[]>> = {};
  const place = (week - 16) * 2 + half;
  if (side === 'left' && week <= 18) turned[2] = ['hips-turn'];
  if (side === 'left' && week <= 18 && place % 2 === 0) turned[1] = ['hips-turn'];
  if (side === 'right' && place === 2) turned[2] = ['hips-turn'];
  return did('OA.5', side === 'left' ? [16, 16, 15] : [16, 16, 16], { side, planned: 15, faults: turned });
}

function twoArms(week: number, turn: number): HistorySet[][] {
  const floor = week > 8;
  const press = week <= 8 ? even('RS.1', 24) : did('P4.5', [2, 2, 2, 2, turn === 3 ? 1 : 2], { planned: 2 });
  return [even('W2.3', 7), press, ...(floor ? [even('H2.7', 7)] : [even('HG.4', 7)])];
}

function story(life: Life): void {
  const { on } = life;
  for (const [rung, week] of [
    ['OA.3', 1],
    ['OA.4', 9],
    ['OA.7', 12],
    ['H6.5', 9],
    ['RS.1', 1],
    ['P4.5', 9],
    ['H2.7', 9],
    ['HG.4', 1],
    ['W1.5', 1],
    ['W2.3', 1],
  ] as const) {
    life.place(rung, on(week, 1), { why: week === 1 ? 'start test' : 'wrist quiet, back to the floor' });
  }
  life.place('OA.5', on(16, 1), {
    side: 'left',
    why: 'left two fingers shorter on ten days of ten: one support back',
  });
  life.place('OA.5', on(16, 1), { side: 'right', why: 'held at the number of the left' });
  life.place('OA.6', on(21, 1), { why: 'review: back to two fingers at 10 s' });
  life.place('OA.7', on(26, 1), { why: 'pass mark met on both sides' });
  life.step({
    kind: 'one-side-fault',
    takenOn: on(20, 4),
    ladderId: 'OA',
    side: 'left',
    reviewOn: on(23, 1),
    words: 'Base looked at from behind on film; shoulder pushed up first',
  });
  life.limit({
    tissue: null,
    region: 'wrist-back',
    side: 'left',
    rule: 'no-floor',
    percent: null,
    from: on(4, 1),
    until: on(8, 7),
    who: 'physiotherapist',
  });
  life.clinician({
    date: on(4, 1),
    region: 'wrist-back',
    side: 'left',
    words: 'No weight on the left palm bent back until the end of week 8; bars are fine.',
  });
  life.step({
    kind: 'pain-lingering',
    takenOn: on(4, 1),
    ladderId: null,
    side: null,
    reviewOn: on(9, 1),
    words: 'Left on bars, physiotherapist asked',
  });
  life.step({
    kind: 'side-gap',
    takenOn: on(16, 1),
    ladderId: 'OA',
    side: 'left',
    reviewOn: on(18, 1),
    words: 'Left one support back, right held at the number of the left',
  });
  plan(
    life,
    1,
    [
      ['A', 'OA.3', { target: 8 }],
      ['A', 'W1.5', { target: 7 }],
      ['B', 'W2.3', { target: 7 }],
      ['B', 'RS.1', { target: 24 }],
      ['B', 'HG.4', { target: 7 }],
    ],
    'Wrist first: left hand on bars, right as usual.',
  );
  plan(
    life,
    9,
    [['A', 'OA.4', { target: 9 }], ['A', 'H6.5', { target: 26 }], ...common()],
    'Back to the floor.',
  );
  plan(life, 12, [['A', 'OA.7', { target: 18 }], ['A', 'H6.5', { target: 28 }], ...common()], '');
  plan(
    life,
    16,
    [['A', 'OA.5', { target: 15 }], ['A', 'H6.5', { target: 28 }], ...common()],
    'Left one support back; three sets left, film from behind.',
  );
  plan(
    life,
    21,
    [['A', 'OA.6', { target: 9 }], ['A', 'H6.5', { target: 29 }], ...common()],
    'Two fingers again, shorter.',
  );
  plan(life, 24, [['A', 'OA.6', { target: 10 }], ['A', 'H6.5', { target: 29 }], ...common()], '');
  const saturday = onWeekday(on(19, 1), 6);
  life.film(
    {
      rungKey: 'OA.5',
      side: 'left',
      angle: 'from behind',
      words: 'Both sides, one set each, hips and hands in the picture.',
      by: on(18, 6),
    },
    {
      askedAt: life.at(on(18, 2), '08:30'),
      receivedAt: life.at(saturday, '12:10'),
      lookedAt: life.at(addDays(saturday, 4), '09:00'),
    },
  );
  plan(
    life,
    26,
    [['A', 'OA.7', { target: 12 }], ['A', 'H6.5', { target: 29 }], ...common()],
    'Two fingers, longer.',
  );
}

function common(): PlanItem[] {
  return [
    ['B', 'W2.3', { target: 7 }],
    ['B', 'P4.5', { target: 2 }],
    ['B', 'H2.7', { target: 7 }],
  ];
}

function plan(life: Life, week: number, items: PlanItem[], why: string): void {
  life.plan(life.on(week, 1), { perWeek: 4, skills: ['One-arm handstand', 'Handstand'], items, why });
}
