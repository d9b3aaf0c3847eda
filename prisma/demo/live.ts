import { demoDate } from './calendar.ts';
import { type Climb, climb, type Ladder } from './climber.ts';
import { type Life, startLife } from './life.ts';

export type Person = {
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
export type Bend = Partial<Pick<Climb, 'change' | 'skip' | 'from' | 'to' | 'until'>> & {
  standing?: 'paused' | 'left' | 'back' | 'starting';
};

/** The life of a client who climbs steadily, with what is bent out of the even course. */
export function live(today: string, person: Person, bend: Bend = {}): Life {
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
