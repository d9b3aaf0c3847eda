import { addDays, demoDate } from './calendar.ts';
import { finish } from './finish.ts';
import type { DemoClient, Life } from './life.ts';
import { live, type Person } from './live.ts';
import { HAND, PULL } from './people.ts';
import { pain } from './work.ts';

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
