import type { HistorySet } from '#lib/domain/history.ts';
import { addDays, demoDate } from './calendar.ts';
import { type Climb, climb, type Ladder } from './climber.ts';
import { finish } from './finish.ts';
import { type DemoClient, type Life, startLife, type Training } from './life.ts';
import { demoRung } from './rungs.ts';
import { pain } from './work.ts';

type Person = {
  slug: string;
  name: string;
  zone: string;
  goal: string;
  skill: string;
  age: number;
  kg: number;
  days: number[];
  minutes: number;
  effort?: number;
  coach?: 'lead' | 'second';
  ladders: Ladder[];
};
type Bend = Partial<Pick<Climb, 'change' | 'skip' | 'from' | 'to' | 'until'>> & {
  standing?: 'paused' | 'left' | 'back' | 'starting';
};

const HAND: Ladder[] = [{ start: 'H3.2' }, { start: 'H4.2' }, { start: 'H2.6', first: 0.8 }];
const PULL: Ladder[] = [{ start: 'PU.4' }, { start: 'HG.3', first: 0.8 }];
const PUSH: Ladder[] = [{ start: 'U1.2' }, { start: 'RS.1' }];

const STEADY: Person[] = [
  {
    slug: 'sina',
    name: 'Sina Faleolo',
    zone: 'Pacific/Apia',
    goal: 'Free handstand, 30 s',
    skill: 'Handstand',
    age: 27,
    kg: 70,
    days: [1, 3, 5],
    minutes: 50,
    ladders: [...HAND, { start: 'W1.4' }],
  },
  {
    slug: 'joaquim',
    name: 'Joaquim Sardinha',
    zone: 'Europe/Lisbon',
    goal: 'Chest-to-bar pull-up',
    skill: 'Chest-to-bar pull-up',
    age: 36,
    kg: 77,
    days: [1, 2, 4, 6],
    minutes: 55,
    ladders: [...PULL, { start: 'LM.1', session: 'B' }, { start: 'RS.2', session: 'B' }],
  },
  {
    slug: 'dagny',
    name: 'Dagny Hellström',
    zone: 'Europe/Stockholm',
    goal: 'Front lever',
    skill: 'Front lever',
    age: 31,
    kg: 62,
    days: [2, 4, 6],
    minutes: 60,
    coach: 'second',
    ladders: [{ start: 'LV.3' }, { start: 'LM.1' }, { start: 'P1.2', pace: 1.2 }],
  },
  {
    slug: 'oyelaran',
    name: 'Oyelaran Fasina',
    zone: 'Africa/Lagos',
    goal: 'Handstand push-up',
    skill: 'Handstand push-up',
    age: 41,
    kg: 83,
    days: [1, 3, 5, 7],
    minutes: 45,
    ladders: [...PUSH, { start: 'H2.3', session: 'B' }, { start: 'W1.5', session: 'B' }],
  },
  {
    slug: 'meilin',
    name: 'Mei-Lin Tsao',
    zone: 'Asia/Taipei',
    goal: 'Press to handstand',
    skill: 'Press to handstand',
    age: 24,
    kg: 54,
    days: [1, 2, 4, 6],
    minutes: 65,
    ladders: [
      { start: 'P2.3' },
      { start: 'P3.2' },
      { start: 'P1.4', session: 'B' },
      { start: 'X4.2', session: 'B', first: 0.5 },
    ],
  },
  {
    slug: 'bertrand',
    name: 'Bertrand Quivy',
    zone: 'America/Toronto',
    goal: 'Muscle-up on rings',
    skill: 'Muscle-up on rings',
    age: 45,
    kg: 81,
    days: [1, 4, 6],
    minutes: 50,
    coach: 'second',
    ladders: [{ start: 'PU.6', pace: 1.4 }, { start: 'DP.2' }, { start: 'RS.3' }],
  },
  {
    slug: 'zofia',
    name: 'Zofia Krawiec',
    zone: 'Europe/Warsaw',
    goal: 'Free handstand, 10 s',
    skill: 'Handstand',
    age: 52,
    kg: 65,
    days: [2, 5, 7],
    minutes: 40,
    ladders: [{ start: 'H2.5', first: 0.8 }, { start: 'H3.1' }, { start: 'H4.1' }],
  },
  {
    slug: 'farrukh',
    name: 'Farrukh Olimov',
    zone: 'Asia/Dushanbe',
    goal: 'Planche',
    skill: 'Planche',
    age: 22,
    kg: 68,
    days: [1, 3, 5],
    minutes: 60,
    ladders: [{ start: 'LN.2' }, { start: 'PL.1', first: 0.8 }, { start: 'LP.1' }],
  },
  {
    slug: 'anahit',
    name: 'Anahit Vardanyan',
    zone: 'Asia/Yerevan',
    goal: 'L-sit to V-sit',
    skill: 'L-sit to V-sit',
    age: 29,
    kg: 57,
    days: [1, 3, 6],
    minutes: 45,
    coach: 'second',
    ladders: [{ start: 'LS.2' }, { start: 'P1.2' }, { start: 'X3.1', first: 0.5, pace: 0.8 }],
  },
  {
    slug: 'caetano',
    name: 'Caetano Brum',
    zone: 'America/Sao_Paulo',
    goal: 'Free handstand and a dip on rings',
    skill: 'Handstand',
    age: 34,
    kg: 74,
    days: [1, 2, 5],
    minutes: 55,
    ladders: [{ start: 'H5.1' }, { start: 'DP.3' }, { start: 'RS.4', first: 0.8 }],
  },
  {
    slug: 'ruth',
    name: 'Ruth Abernethy',
    zone: 'Europe/London',
    goal: 'Ten pull-ups',
    skill: 'Pull-up',
    age: 61,
    kg: 60,
    days: [1, 3, 6],
    minutes: 40,
    coach: 'second',
    ladders: [{ start: 'PU.1' }, { start: 'HG.1' }, { start: 'U1.1' }],
  },
];

function live(today: string, person: Person, bend: Bend = {}): Life {
  const from = bend.from ?? demoDate(today, 1, 1);
  const to = bend.to ?? demoDate(today, 26, 7);
  const effort = person.effort ?? 6;
  const life = startLife(today, {
    slug: person.slug,
    name: person.name,
    zone: person.zone,
    coach: person.coach ?? 'lead',
    goal: person.goal,
    goalSkills: [person.skill],
    birthYear: Number(today.slice(0, 4)) - person.age,
    bodyMassKg: person.kg,
    week: { days: person.days.length, minutes: person.minutes, effort },
    joined: from,
    standing: bend.standing ?? 'in-training',
    answers: {
      training: `${person.days.length} sessions of ${person.minutes} minutes`,
      health: 'nothing to report',
    },
  });
  climb(life, {
    ladders: person.ladders,
    skills: [person.skill],
    perWeek: person.days.length,
    days: person.days,
    effort,
    minutes: person.minutes,
    ...bend,
    from,
    to,
  });
  life.seenBetween(from, to);
  return life;
}

/** What makes one of the eleven steady ones speak up in the last week, so that the board has a morning. */
const BENDS: Record<string, (today: string) => Bend> = {
  joaquim: (today) => ({ until: addDays(today, 1) }),
  zofia: (today) => ({ change: passing('H3', demoDate(today, 26, 2)) }),
  ruth: (today) => ({ change: passing('HG', demoDate(today, 26, 3)) }),
  anahit: (today) => ({ until: addDays(today, 4) }),
  oyelaran: (today) => ({
    change: onLastDay(today, (done) => ({
      ...done,
      effort: 5,
      words: 'Right hand is numb since the push-ups, also this evening.',
      signs: [{ sign: 'numb-or-tingling', goneWithinMinute: false, region: 'hand-fingers', side: 'right' }],
    })),
  }),
  dagny: (today) => ({
    change: (date, done) => {
      const value = [4, 4, 5, 5][
        [
          demoDate(today, 25, 6),
          demoDate(today, 26, 2),
          demoDate(today, 26, 4),
          demoDate(today, 26, 6),
        ].indexOf(date)
      ];
      return value === undefined
        ? done
        : { ...done, pain: [pain(['elbow-inner', 'left'], 'during', value, false)] };
    },
  }),
  bertrand: (today) => ({
    change: (date, done) =>
      date >= demoDate(today, 25, 6)
        ? {
            ...done,
            effort: 8,
            minutes: 78,
            work: done.work.map((sets) => [...sets, ...again(sets), ...again(again(sets))]),
          }
        : done,
  }),
  farrukh: (today) => ({
    change: (date, done) =>
      date >= demoDate(today, 26, 1)
        ? {
            ...done,
            effort: 8,
            work: done.work.map((sets, place) =>
              place === 0
                ? sets.map((set, index) =>
                    index >= 2 && set.value !== null
                      ? { ...set, value: Math.max(1, Math.floor(set.value * 0.55)) }
                      : set,
                  )
                : sets,
            ),
          }
        : done,
  }),
};

/** From this date on the pass mark of the ladder's rung is met. */
function passing(ladderId: string, from: string): NonNullable<Bend['change']> {
  const met = (set: HistorySet): HistorySet => {
    const rung = demoRung(set.rungId);
    if (rung.ladderId !== ladderId) return set;
    return { ...set, value: rung.pass.target, planned: rung.pass.target, clean: true, faults: [] };
  };
  return (date, done) => (date < from ? done : { ...done, work: done.work.map((sets) => sets.map(met)) });
}

function again(sets: Training['work'][number]): Training['work'][number] {
  return sets.map((set) => ({ ...set, index: set.index + sets.length }));
}

function onLastDay(
  today: string,
  change: (done: Training) => Training,
): (date: string, done: Training) => Training {
  return (date, done) => (date === demoDate(today, 26, 7) ? change(done) : done);
}

export function steadyClimbers(today: string): DemoClient[] {
  return STEADY.map((person) => {
    const life = live(today, person, BENDS[person.slug]?.(today) ?? {});
    if (person.slug === 'caetano') {
      life.ask(
        life.at(demoDate(today, 26, 2), '11:20'),
        'Rings turn out at the top of the dip. Do I hold them in, or let them go?',
        null,
      );
    }
    const filmed = FILMED[person.slug];
    if (filmed) {
      life.film(
        {
          rungKey: filmed,
          side: 'both',
          angle: 'from the side',
          words: 'One set from the side, whole body.',
          by: demoDate(today, 26, 6),
        },
        {
          askedAt: life.at(demoDate(today, 26, 1), '08:40'),
          receivedAt: life.at(demoDate(today, 26, 3), '20:05'),
          lookedAt: null,
        },
      );
    }
    return finish(life);
  });
}

/** Two films wait on the demo's morning. */
const FILMED: Record<string, string> = { bertrand: 'DP.2', farrukh: 'PL.2' };

/** Seven in other standings: two new, one paused, one gone, one back, and two who look odd and are fine. */
export function otherStandings(today: string): DemoClient[] {
  return [
    weekThree(today),
    weekTwo(today),
    paused(today),
    left(today),
    back(today),
    sixEqualDays(today),
    twinges(today),
  ].map(finish);
}

function weekThree(today: string): Life {
  return live(
    today,
    {
      slug: 'ilse',
      name: 'Ilse Vandamme',
      zone: 'Europe/Brussels',
      goal: 'A first handstand at the wall',
      skill: 'Handstand',
      age: 39,
      kg: 64,
      days: [1, 3, 5],
      minutes: 40,
      ladders: [{ start: 'H2.2' }, { start: 'W1.2' }, { start: 'H1.2' }],
    },
    { from: demoDate(today, 24, 1), standing: 'starting' },
  );
}

/** Joined, and nothing until the sixth day after the first planned one. */
function weekTwo(today: string): Life {
  const start = demoDate(today, 26, 3);
  return live(
    today,
    {
      slug: 'kwabena',
      name: 'Kwabena Sarpong',
      zone: 'Africa/Accra',
      goal: 'Ten push-ups, then a handstand',
      skill: 'Handstand',
      age: 48,
      kg: 88,
      days: [1, 3, 5],
      minutes: 35,
      ladders: [{ start: 'U1.1' }, { start: 'H2.1' }, { start: 'W1.1' }],
    },
    { from: demoDate(today, 25, 4), standing: 'starting', skip: (date) => date < start },
  );
}

function paused(today: string): Life {
  const stop = demoDate(today, 17, 3);
  const life = live(
    today,
    {
      slug: 'noor',
      name: 'Noor Sabbagh',
      zone: 'Asia/Amman',
      goal: 'Front lever',
      skill: 'Front lever',
      age: 33,
      kg: 59,
      days: [1, 3, 5],
      minutes: 50,
      ladders: [{ start: 'LV.2' }, { start: 'PU.3' }],
    },
    { to: stop, standing: 'paused' },
  );
  life.absence({ from: addDays(stop, 1), to: null, kind: 'pause' });
  return life;
}

function left(today: string): Life {
  return live(
    today,
    {
      slug: 'magnus',
      name: 'Magnus Thorvik',
      zone: 'Europe/Oslo',
      goal: 'Planche',
      skill: 'Planche',
      age: 26,
      kg: 76,
      days: [2, 4, 6],
      minutes: 55,
      ladders: [{ start: 'LN.1' }, { start: 'RS.1' }],
    },
    { to: demoDate(today, 15, 6), standing: 'left' },
  );
}

/** Back after 14 months: started like a new client, easier and shorter than before. */
function back(today: string): Life {
  const life = live(
    today,
    {
      slug: 'ximena',
      name: 'Ximena Arrieta',
      zone: 'America/Mexico_City',
      goal: 'Free handstand again',
      skill: 'Handstand',
      age: 37,
      kg: 58,
      days: [1, 4, 6],
      minutes: 35,
      effort: 5,
      ladders: [{ start: 'H2.2' }, { start: 'W1.1' }, { start: 'H1.2' }],
    },
    { from: demoDate(today, 20, 1), standing: 'back' },
  );
  life.extra.note = 'Trained with us until 14 months ago; starts like new.';
  return life;
}

/** Six equal days a week, planned so: monotony is high and nothing is wrong. */
function sixEqualDays(today: string): Life {
  const person: Person = {
    slug: 'takumi',
    name: 'Takumi Hoshino',
    zone: 'Asia/Tokyo',
    goal: 'Free handstand, 60 s',
    skill: 'Handstand',
    age: 30,
    kg: 63,
    days: [1, 2, 3, 4, 5, 6],
    minutes: 40,
    effort: 5,
    ladders: [
      { start: 'H5.2', pace: 1.1 },
      { start: 'X1.2', first: 0.5 },
    ],
  };
  return live(today, person, { change: (_date, done) => ({ ...done, effort: 6, minutes: 40 }) });
}

/** A twinge of 2 here and there, never twice in the same place: nothing to say. */
function twinges(today: string): Life {
  const where = [
    ['wrist-back', 'right'],
    ['shoulder-front', 'left'],
    ['elbow-outer', 'right'],
    ['wrist-back', 'left'],
  ] as const;
  const life = live(
    today,
    {
      slug: 'priya',
      name: 'Priya Raghunathan',
      zone: 'Asia/Kolkata',
      goal: 'Press to handstand',
      skill: 'Press to handstand',
      age: 43,
      kg: 60,
      days: [1, 3, 5, 6],
      minutes: 50,
      coach: 'second',
      ladders: [
        { start: 'P2.1' },
        { start: 'P1.1' },
        { start: 'H2.4', session: 'B' },
        { start: 'X3.1', session: 'B', first: 0.5, pace: 0.8 },
      ],
    },
    {
      change: (date, done) => {
        const day = Number(date.slice(8));
        const spot = where[day % where.length];
        return spot && day % 9 === 0 ? { ...done, pain: [pain(spot, 'during', 2, false)] } : done;
      },
    },
  );
  return life;
}

/** Two clients of the other team, only to show that nothing crosses. */
export function otherTeam(today: string): DemoClient[] {
  const one = live(today, {
    slug: 'liv',
    name: 'Liv Aronsen',
    zone: 'Europe/Oslo',
    goal: 'Free handstand',
    skill: 'Handstand',
    age: 28,
    kg: 61,
    days: [1, 3, 6],
    minutes: 45,
    ladders: HAND,
  });
  const two = live(today, {
    slug: 'pau',
    name: 'Pau Ferrandis',
    zone: 'Europe/Madrid',
    goal: 'Ten pull-ups',
    skill: 'Pull-up',
    age: 35,
    kg: 78,
    days: [2, 4, 6],
    minutes: 45,
    ladders: PULL,
  });
  return [one, two].map(finish);
}
