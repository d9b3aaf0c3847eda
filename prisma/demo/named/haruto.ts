import type { HistoryPain, HistorySet } from '#lib/domain/history.ts';
import { demoDate } from '../calendar.ts';
import { finish } from '../finish.ts';
import { type DemoClient, type Life, type PlanItem, startLife, type Training } from '../life.ts';
import { did, even, pain } from '../work.ts';

const ELBOW = ['elbow-inner', 'right'] as const;
const GOALS = ['Planche', 'Front lever', 'Muscle-up on rings', 'Handstand push-up'];

/** Sixteen, four goals at once, a club besides: too much, sore, rested, built up again. */
export function haruto(today: string): DemoClient {
  const life = startLife(today, {
    slug: 'haruto',
    name: 'Haruto Kinoshita',
    zone: 'Asia/Tokyo',
    goal: 'Straddle planche, front lever, muscle-up and handstand push-up before the summer.',
    goalSkills: GOALS,
    birthYear: Number(today.slice(0, 4)) - 16,
    bodyMassKg: 58,
    week: { days: 6, minutes: 60, effort: 6 },
    joined: demoDate(today, 1, 1),
    guardian: 'Naoko Kinoshita',
    note: 'Under 18; his mother has her own link. Trains at a club on Wednesdays too.',
    answers: {
      training: 'six days, plus the gymnastics club on Wednesday',
      kit: 'bar, rings, low bars, floor',
      health: 'nothing to report',
    },
  });
  story(life);
  for (let week = 1; week <= 26; week++) {
    for (let day = 1; day <= 7; day++) trainDay(life, week, day);
  }
  life.seenBetween(life.on(1, 1), life.on(26, 7), 2);
  return finish(life);
}

function trainDay(life: Life, week: number, day: number): void {
  const done = dayOf(week, day);
  if (done)
    life.train(life.on(week, day), { ...done, session: sessionOf(week, day), pain: elbow(week, day) });
  else if (week === 13 && day > 5) life.rest(life.on(week, day), { pain: [pain(ELBOW, 'today', 4, false)] });
  else life.rest(life.on(week, day));
}

/** Odd days are A, even days B, while the plan has both. */
function sessionOf(week: number, day: number): string {
  return week <= 11 || week >= 21 ? (day % 2 === 1 ? 'A' : 'B') : 'A';
}

function dayOf(week: number, day: number): Training | undefined {
  const normal = { effort: 6 + (day % 2), minutes: 58 + ((week + day) % 4) };
  if (week === 5) return { ...normal, effort: 7, session: 'A', work: work(week, day) };
  if (day === 7) return undefined;
  if (week <= 11) return { ...normal, session: 'A', work: work(week, day) };
  if (week === 12) return { session: 'A', effort: 8, minutes: 80, work: hardWeek(day) };
  if (week === 13)
    return day <= 5
      ? { session: 'A', effort: 7, minutes: day === 5 ? 60 : 45, work: [pulls(4), even('U1.5', 4)] }
      : undefined;
  if (week >= 14 && week <= 18 && day % 2 === 0) return undefined;
  // Four days a week from week 19 on.
  if (week >= 19 && (day === 4 || day === 2)) return undefined;
  if (week === 14) return { session: 'A', effort: 3, minutes: 30, work: [even('X5.1', 25), compression()] };
  if (week <= 20) return { session: 'A', effort: 5, minutes: 40 + (week - 15) * 3, work: backInSteps(week) };
  return {
    session: 'A',
    effort: week <= 21 ? 5 : 6,
    minutes: Math.min(58, 52 + (week - 20) * 2),
    work: later(week, day),
  };
}

/** Before the jump: five sets of each strength drill; weeks 9 and 10 seven of each. */
function work(week: number, day: number): HistorySet[][] {
  const sets = week === 9 || week === 10 ? 7 : 5;
  return day % 2 === 1
    ? [planche('PL.7', sets, 8), pulls(sets), even('U1.5', 4, { sets: 5 })]
    : [lever(sets), planche('PL.7', sets, 8), even('U1.5', 4, { sets: 5 })];
}

function hardWeek(day: number): HistorySet[][] {
  const straddle = did('PL.11', [3, 3, 3, 2, 2].slice(0, day % 2 === 1 ? 5 : 3), { planned: 3 });
  return [straddle, pulls(9), lever(5), even('U1.5', 4, { sets: 5 })];
}

function planche(key: string, sets: number, seconds: number): HistorySet[] {
  return did(
    key,
    Array.from({ length: sets }, (_, place) => (place === sets - 1 ? seconds - 1 : seconds)),
    { planned: seconds, support: 'parallel-bars' },
  );
}
function pulls(sets: number): HistorySet[] {
  return did(
    'PU.7',
    Array.from({ length: sets }, (_, place) => (place === sets - 1 ? 3 : 4)),
    { planned: 4 },
  );
}
function lever(sets: number): HistorySet[] {
  return did(
    'LV.5',
    Array.from({ length: sets }, (_, place) => (place === sets - 1 ? 7 : 8)),
    { planned: 8 },
  );
}

function compression(): HistorySet[] {
  return did('P1.3', [7, 7, 7, 6], { planned: 7 });
}

/** Four sets as ever, shorter: 50, 60, 70 % of before. */
function backInSteps(week: number): HistorySet[][] {
  const seconds = week <= 16 ? 4 : week <= 18 ? 5 : 6;
  return week < 16
    ? [planche('PL.5', 4, 4), compression()]
    : [planche('PL.5', 4, seconds), did('PU.5', [4, 4, 4, 3], { planned: 4 })];
}

function later(week: number, day: number): HistorySet[][] {
  const seconds = week >= 24 ? 7 : 6;
  return [
    planche('PL.7', 4, seconds),
    day % 2 === 1 ? did('PU.7', [4, 4, 4, 3], { planned: 4 }) : did('U1.4', [4, 4, 4, 3], { planned: 4 }),
    compression(),
  ];
}

function elbow(week: number, day: number): HistoryPain[] {
  const during = (value: number, usual = true) => [pain(ELBOW, 'during', value, usual)];
  if (week === 12) return during([1, 1, 3, 3, 4, 4][day - 1] ?? 1, day < 3);
  if (week === 13)
    return day === 5
      ? [...during(4, false), pain(ELBOW, 'after', 6, false)]
      : during([4, 4, 4, 4][day - 1] ?? 4, false);
  if (week === 14 || week === 15) return during(3, false);
  if (week === 16 || week === 17) return during(2);
  if (week === 9 || week === 10) return during(day % 3 === 1 ? 2 : 1);
  if (week >= 4 && week <= 22) return during(1);
  return [];
}

function story(life: Life): void {
  const { on } = life;
  for (const [rung, week, why] of [
    ['PL.7', 1, 'start test'],
    ['LV.5', 1, 'start test'],
    ['PU.7', 1, 'start test'],
    ['U1.5', 1, 'start test'],
    ['P1.3', 14, 'light work'],
    ['PL.5', 15, 'back in steps'],
    ['PU.5', 16, 'back in steps'],
    ['PL.7', 21, 'back to before'],
    ['PU.7', 21, 'back to before'],
    ['U1.4', 21, 'back in steps'],
  ] as const) {
    life.place(rung, on(week, 1), { why });
  }
  const strength = (session: string, third: string): PlanItem[] => [
    [session, 'PL.7', { sets: 5, target: 8 }],
    [session, third, { sets: 5, target: third === 'PU.7' ? 4 : 8 }],
    [session, 'U1.5', { sets: 5, target: 4 }],
  ];
  const compress: PlanItem = ['A', 'P1.3', { sets: 4, target: 7 }];
  life.plan(on(1, 1), {
    perWeek: 6,
    skills: GOALS,
    items: [...strength('A', 'PU.7'), ...strength('B', 'LV.5')],
    why: 'All four, because he wants to; looked at again in week 8.',
  });
  life.plan(on(12, 1), {
    perWeek: 6,
    skills: GOALS,
    items: [
      ['A', 'PL.11', { target: 3 }],
      ['A', 'PU.7', { sets: 9, target: 4 }],
      ['A', 'LV.5', { sets: 5, target: 8 }],
      ['A', 'U1.5', { target: 4 }],
    ],
    why: 'A camp week with his club.',
  });
  life.plan(on(14, 1), {
    perWeek: 3,
    skills: ['Planche'],
    items: [compress, ['A', 'X5.1', { target: 25 }]],
    why: 'No pulling. Upper back and compression only.',
  });
  const two = { skills: ['Planche', 'Pull-up'] };
  life.plan(on(15, 1), {
    ...two,
    perWeek: 3,
    items: [['A', 'PL.5', { target: 4 }], compress],
    why: 'Half of before; front lever and muscle-up dropped.',
  });
  life.plan(on(16, 1), {
    ...two,
    perWeek: 3,
    items: [
      ['A', 'PL.5', { target: 4 }],
      ['A', 'PU.5', { sets: 4, target: 4 }],
    ],
    why: 'Slow lowering on the bar again.',
  });
  life.plan(on(17, 1), {
    ...two,
    perWeek: 3,
    items: [
      ['A', 'PL.5', { target: 5 }],
      ['A', 'PU.5', { sets: 4, target: 4 }],
    ],
    why: '60 %',
  });
  life.plan(on(19, 1), {
    ...two,
    perWeek: 4,
    items: [
      ['A', 'PL.5', { target: 6 }],
      ['A', 'PU.5', { sets: 4, target: 4 }],
    ],
    why: '70 %',
  });
  life.plan(on(21, 1), {
    ...two,
    perWeek: 4,
    items: [
      ['A', 'PL.7', { target: 6 }],
      ['A', 'PU.7', { sets: 4, target: 4 }],
      compress,
      ['B', 'PL.7', { target: 6 }],
      ['B', 'U1.4', { sets: 4, target: 4 }],
      ['B', 'P1.3', { sets: 4, target: 7 }],
    ],
    why: 'Two goals, four days.',
  });
  life.step({
    kind: 'pain-high',
    takenOn: on(13, 5),
    ladderId: null,
    side: null,
    reviewOn: on(15, 7),
    words: 'Pulling stopped, mother told, doctor asked',
  });
  life.step({
    kind: 'load-jump',
    takenOn: on(14, 1),
    ladderId: null,
    side: null,
    reviewOn: on(20, 1),
    words: 'Two goals dropped, back in steps of 50, 60 and 70 %',
  });
  life.clinician({
    date: on(15, 3),
    region: 'elbow-inner',
    side: 'right',
    words: 'Load it again in steps; stop at 4.',
  });
  life.limit({
    tissue: 'elbow-bending',
    region: null,
    side: null,
    rule: 'reduced',
    percent: 60,
    from: on(15, 3),
    until: on(18, 7),
    who: 'sports doctor',
  });
  life.extra.coachWords.push({
    at: life.at(on(13, 5), '21:40'),
    text: 'No pulling from now. Tell your mother tonight, I have written to her too.',
    checkInId: null,
  });
}
