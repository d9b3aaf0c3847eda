import { demoDate } from '../calendar.ts';
import { finish } from '../finish.ts';
import { type DemoClient, type Life, type PlanItem, startLife } from '../life.ts';
import { did, even } from '../work.ts';

const DAYS = [1, 3, 5];
type Stage = {
  from: [week: number, day: number];
  rung: string;
  target: number;
  sets: (turn: number) => number[];
  why: string;
};

/** The planche ladder, stage by stage: once too high, back, up, stuck on 100° for weeks, split, up. */
const STAGES: Stage[] = [
  {
    from: [1, 1],
    rung: 'PL.3',
    target: 10,
    sets: (turn) => (turn === 2 ? [10, 10, 10, 8] : [10, 10, 10, 10]),
    why: 'start test',
  },
  {
    from: [5, 4],
    rung: 'PL.7',
    target: 8,
    sets: () => [8, 8, 6, 5, 5, 4],
    why: 'two rungs at once: looked ready on film',
  },
  {
    from: [6, 6],
    rung: 'PL.4',
    target: 7,
    sets: (turn) => (turn === 2 ? [7, 7, 7, 6] : [7, 7, 7, 7]),
    why: 'too hard: back to 120°',
  },
  { from: [8, 1], rung: 'PL.4', target: 8, sets: () => [8, 8, 8, 8], why: '' },
  {
    from: [9, 1],
    rung: 'PL.5',
    target: 7,
    sets: (turn) => (turn === 2 ? [7, 7, 7, 6] : [7, 7, 7, 7]),
    why: 'pass mark met',
  },
  { from: [10, 4], rung: 'PL.5', target: 8, sets: () => [8, 8, 8, 8], why: '' },
  {
    from: [11, 4],
    rung: 'PL.6',
    target: 8,
    sets: (turn) => (turn === 1 ? [8, 8, 8, 5.5] : [8, 8, 8, 6]),
    why: 'pass mark met',
  },
  {
    from: [20, 1],
    rung: 'PL.6',
    target: 7,
    sets: (turn) => (turn === 2 ? [7, 7, 7, 6] : [7, 7, 7, 7]),
    why: 'stuck on 100°: shorter, with 110° beside it',
  },
  {
    from: [22, 1],
    rung: 'PL.6',
    target: 7,
    sets: (turn) => (turn === 2 ? [7, 7, 7, 6] : [7, 7, 7, 7]),
    why: 'back to 100°',
  },
  {
    from: [24, 1],
    rung: 'PL.6',
    target: 8,
    sets: (turn) => (turn === 2 ? [8, 8, 8, 7] : [8, 8, 8, 7.5]),
    why: '',
  },
  { from: [25, 1], rung: 'PL.6', target: 8, sets: () => [8, 8, 8, 8], why: '' },
  {
    from: [25, 6],
    rung: 'PL.7',
    target: 7,
    sets: (turn) => (turn === 2 ? [7, 7, 7, 5] : [7, 7, 7, 6]),
    why: 'pass mark met',
  },
];

/** Planche: too hard once, then honestly stuck, then unstuck by splitting the rung. */
export function aroha(today: string): DemoClient {
  const life = startLife(today, {
    slug: 'aroha',
    name: 'Aroha Tamihana',
    zone: 'Pacific/Auckland',
    goal: 'Advanced tuck planche, ten seconds.',
    goalSkills: ['Planche'],
    birthYear: Number(today.slice(0, 4)) - 33,
    bodyMassKg: 63,
    week: { days: 3, minutes: 55, effort: 7 },
    joined: demoDate(today, 1, 1),
    note: 'Patient. Trains before work, writes late.',
    answers: {
      training: 'three mornings of 55 minutes',
      kit: 'low bars, floor, bar',
      health: 'nothing to report',
    },
  });
  stages(life);
  for (let week = 1; week <= 26; week++) {
    for (const [turn, day] of DAYS.entries()) trainDay(life, week, turn, day);
  }
  life.step({
    kind: 'too-hard',
    takenOn: life.on(6, 6),
    ladderId: 'PL',
    side: 'both',
    reviewOn: life.on(8, 6),
    words: 'One rung back with more time there',
  });
  life.step({
    kind: 'stalled',
    takenOn: life.on(20, 1),
    ladderId: 'PL',
    side: 'both',
    reviewOn: life.on(24, 1),
    words: 'Rung split: 110° longer, 100° beside it; one more rest day',
  });
  life.seenBetween(life.on(1, 1), life.on(26, 7));
  return finish(life);
}

function stageOn(life: Life, date: string): Stage | undefined {
  return STAGES.findLast((stage) => life.on(...stage.from) <= date);
}

function trainDay(life: Life, week: number, turn: number, day: number): void {
  const date = life.on(week, day);
  const stage = stageOn(life, date);
  if (!stage) return;
  const beside =
    week >= 20 && week <= 21 ? [did('PL.5', [8, 8], { planned: 8, support: 'parallel-bars' })] : [];
  life.train(date, {
    effort: 7,
    minutes: 53 + ((week + turn) % 4),
    work: [
      did(stage.rung, stage.sets(turn), { planned: stage.target, support: 'parallel-bars' }),
      ...beside,
      lean(week, turn),
      even('P1.2', 7),
      dips(turn),
    ],
    words: week === 19 && turn === 1 ? 'Fourth set goes at five and a half again.' : '',
    at: '06:30',
  });
}

function lean(week: number, turn: number) {
  const target = Math.min(14, 9 + Math.floor(week / 5));
  return did('LN.4', [target, target, target, target, turn === 2 ? target - 3 : target], { planned: target });
}
function dips(turn: number) {
  return did('DP.3', [4, 4, 4, 4, turn === 2 ? 3 : 4], { planned: 4 });
}

function stages(life: Life): void {
  let rung = '';
  for (const stage of STAGES) {
    const from = life.on(...stage.from);
    if (stage.rung !== rung) life.place(stage.rung, from, { why: stage.why });
    rung = stage.rung;
    const beside: PlanItem[] = stage.from[0] === 20 ? [['A', 'PL.5', { sets: 2, target: 8 }]] : [];
    life.plan(from, {
      perWeek: 3,
      skills: ['Planche'],
      items: [
        [
          'A',
          stage.rung,
          { sets: stage.rung === 'PL.7' && stage.from[0] === 5 ? 6 : 4, target: stage.target },
        ],
        ...beside,
        ['A', 'LN.4', { target: 12 }],
        ['A', 'P1.2', { target: 7 }],
        ['A', 'DP.3', { target: 4 }],
      ],
      why: stage.why,
    });
  }
  for (const each of ['LN.4', 'P1.2', 'DP.3']) life.place(each, life.on(1, 1), { why: 'start test' });
}
