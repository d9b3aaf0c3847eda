import { addDays, demoDate } from './calendar.ts';
import type { DemoClient, DemoStart } from './life.ts';

const BLANK = { healthWords: '', dangerSigns: [], breakWeeks: 0, otherSport: '', why: '' };

/** The starts that are written out whole: a word on file, a yes that came later and waits, and a plain one. */
export function demoStart({ history, extra }: DemoClient, today: string): DemoStart | undefined {
  const who = { adult: true, birthYear: extra.birthYear, bodyMassKg: history.client.bodyMassKg };
  const { intakePain: pain } = history.client;
  const plain = { ...BLANK, ...who, pain, skills: extra.goalSkills, goal: extra.goal };
  if (extra.slug === 'padraig') {
    const joined = demoDate(today, 1, 1);
    return {
      answers: {
        ...plain,
        health: ['blood-pressure'],
        healthWords: 'Tablets for four years, still high after night shifts. My doctor knows what I train.',
        week: { days: 4, minutes: 45, effort: 6 },
        otherSport: 'Cycling to work',
        job: 'Nurse, night shifts',
        kit: ['parallel-bars', 'box'],
        ground: 'hard-floor',
        why: 'I could do one at twenty.',
      },
      holds: [{ told: 'blood-pressure', from: joined, until: addDays(joined, -1) }],
      words: [
        {
          told: 'blood-pressure',
          date: joined,
          clinician: 'family doctor',
          words:
            'Under control with the new tablets. Upside-down work is fine, no long holds of the breath. Letter on file.',
          reviewOn: null,
        },
      ],
      changes: [],
    };
  }
  if (extra.slug === 'ilse') {
    const told = demoDate(today, 26, 7);
    return {
      answers: {
        ...plain,
        health: ['eyes'],
        week: { days: 3, minutes: 40, effort: 5 },
        job: 'At a desk',
        kit: ['box', 'block'],
        ground: 'mat',
        why: 'My daughter can do it.',
      },
      holds: [{ told: 'eyes', from: told, until: null }],
      words: [],
      changes: [
        {
          at: `${told}T20:15:00.000Z`,
          field: 'health',
          before: [],
          after: ['eyes'],
          why: 'She rang: the optician found high pressure in an eye and sends her to a doctor.',
        },
      ],
    };
  }
  if (extra.slug === 'kwabena')
    return {
      answers: {
        ...plain,
        health: [],
        week: { days: 3, minutes: 35, effort: 6 },
        breakWeeks: 10,
        otherSport: 'Football on Saturdays, until last winter',
        job: 'Drives a bus',
        kit: [],
        ground: 'grass',
      },
      holds: [],
      words: [],
      changes: [],
    };
  return undefined;
}
