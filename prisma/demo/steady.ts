import { hoursWaited } from '#lib/checks/answering-hours.ts';
import type { HistorySet } from '#lib/domain/history.ts';
import { addDays, demoDate } from './calendar.ts';
import { finish } from './finish.ts';
import { DEMO_ANSWERING, type DemoClient, type Training } from './life.ts';
import { type Bend, live } from './live.ts';
import { STEADY } from './people.ts';
import { demoRung } from './rungs.ts';
import { pain } from './work.ts';

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
          receivedAt: arrivedBeforeMorning(today, (date) => life.at(date, '20:05'), life.at(today, '03:00')),
          lookedAt: null,
        },
      );
    }
    return finish(life);
  });
}

/** Two films wait on the demo's morning. */
const FILMED: Record<string, string> = { bertrand: 'DP.2', farrukh: 'PL.2' };

/** The newest evening that has waited a day of answering hours by the morning, whatever the weekday. */
function arrivedBeforeMorning(today: string, at: (date: string) => string, morning: string): string {
  const evenings = [1, 2, 3, 4, 5, 6].map((back) => at(addDays(today, -back)));
  return (
    evenings.find((evening) => hoursWaited(evening, morning, DEMO_ANSWERING) >= 24) ?? at(addDays(today, -6))
  );
}
