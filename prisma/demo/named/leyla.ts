import type { HistorySet } from '#lib/domain/history.ts';
import { demoDate } from '../calendar.ts';
import { finish } from '../finish.ts';
import { type DemoClient, type Life, type PlanItem, startLife } from '../life.ts';
import { did, even } from '../work.ts';

/** Training days by week where they are not the usual four. */
const DAYS: Record<number, number[]> = {
  10: [],
  11: [],
  12: [],
  13: [4, 5, 6, 7],
  14: [1, 3, 5, 6],
  18: [3],
  19: [2],
  20: [1],
  21: [1, 7],
  22: [5],
  23: [],
  24: [4],
  25: [2, 6],
  26: [2, 6],
};
const USUAL = [1, 2, 4, 6];

/** A holiday told beforehand, back too fast, then fading and gone quiet: a new job. */
export function leyla(today: string): DemoClient {
  const life = startLife(today, {
    slug: 'leyla',
    name: 'Leyla Karimova',
    zone: 'Asia/Tashkent',
    coach: 'second',
    goal: 'Chest-to-bar pull-ups, five in a row, and a quiet handstand.',
    goalSkills: ['Chest-to-bar pull-up', 'Handstand'],
    birthYear: Number(today.slice(0, 4)) - 38,
    bodyMassKg: 61,
    week: { days: 4, minutes: 48, effort: 7 },
    joined: demoDate(today, 1, 1),
    note: 'New job since week 20: two short sessions is what fits.',
    answers: { training: 'four sessions of 48 minutes', kit: 'bar, box, wall', health: 'nothing to report' },
  });
  for (let week = 1; week <= 26; week++) {
    for (const [turn, day] of (DAYS[week] ?? USUAL).entries()) {
      const short = week >= 25;
      life.train(life.on(week, day), {
        session: turn % 2 === 0 ? 'A' : 'B',
        effort: short ? 5 : 7,
        minutes: short ? 30 : 47 + (turn % 3),
        work: workOf(week, turn),
      });
    }
  }
  story(life);
  life.seenBetween(life.on(1, 1), life.on(26, 7));
  return finish(life);
}

function workOf(week: number, turn: number): HistorySet[][] {
  const top =
    week <= 9
      ? did('CB.3', [4, 4, 4, turn === 3 ? 3 : 4], { planned: 4 })
      : did('CB.2', [38, 38, turn === 3 ? 34 : 38], { planned: 38 });
  if (week >= 25)
    return turn === 0
      ? [did('CB.2', [40, 36], { planned: 40 }), did('H3.2', [2, 2], { planned: 2 })]
      : [did('PU.7', [4, 4], { planned: 4 }), did('H4.2', [2, 2], { planned: 2 })];
  return turn % 2 === 0
    ? [top, did('H3.2', [2, 2, 2, 2, turn === 2 ? 1 : 2], { planned: 2 })]
    : [did('PU.7', [4, 4, 4, 4, turn === 3 ? 3 : 4], { planned: 4 }), even('H4.2', 2), top];
}

function story(life: Life): void {
  const { on } = life;
  for (const [rung, week] of [
    ['CB.3', 1],
    ['PU.7', 1],
    ['H3.2', 1],
    ['H4.2', 1],
    ['CB.2', 13],
  ] as const) {
    life.place(rung, on(week, 1), { why: week === 1 ? 'start test' : 'one rung back after the holiday' });
  }
  const items = (top: string, target: number): PlanItem[] => [
    ['A', top, { target, times: 4 }],
    ['A', 'H3.2', { target: 2 }],
    ['B', 'PU.7', { target: 4 }],
    ['B', 'H4.2', { target: 2 }],
  ];
  const skills = ['Chest-to-bar pull-up', 'Handstand'];
  life.plan(on(1, 1), { perWeek: 4, skills, items: items('CB.3', 4), why: 'Top range first.' });
  life.plan(on(13, 4), {
    perWeek: 4,
    skills,
    items: items('CB.2', 38),
    why: 'Back from holiday: half of before in the first week.',
  });
  life.plan(on(25, 1), {
    perWeek: 2,
    skills,
    items: [
      ['A', 'CB.2', { sets: 2, target: 40 }],
      ['A', 'H3.2', { sets: 2, target: 2 }],
      ['B', 'PU.7', { sets: 2, target: 4 }],
      ['B', 'H4.2', { sets: 2, target: 2 }],
    ],
    why: 'New job: two short sessions, nothing else.',
  });
  life.absence({ from: on(9, 7), to: on(13, 3), kind: 'holiday' });
  life.step({
    kind: 'gone-quiet',
    takenOn: on(24, 2),
    ladderId: null,
    side: null,
    reviewOn: on(26, 2),
    words: 'Wrote first, asked what fits now',
  });
  life.ask(life.at(on(24, 4), '20:05'), 'I have a new job. Is two times half an hour worth anything?', {
    at: life.at(on(24, 5), '09:30'),
    text: 'Yes. Two short ones keep almost all of it. New plan is in your phone.',
  });
  mistyped(life);
}

/** Week 8: 70 typed for 7 seconds on Tuesday, put right on Sunday. */
function mistyped(life: Life): void {
  const checkIn = life.history.checkIns.find((each) => each.date === life.on(8, 2));
  if (!checkIn) return;
  const sets = checkIn.sets.map((set) =>
    set.rungId === 'CB.3' && set.index === 1 ? { ...set, value: 70 } : set,
  );
  life.extra.corrected.push({
    first: { ...checkIn, id: life.random.uuid(), sets },
    correctedBy: checkIn.id,
    at: life.at(life.on(8, 7), '18:00'),
  });
}
