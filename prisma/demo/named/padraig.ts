import type { HistorySet } from '#lib/domain/history.ts';
import { addDays, demoDate, onWeekday } from '../calendar.ts';
import { finish } from '../finish.ts';
import { type DemoClient, type Life, type PlanItem, startLife, type Training } from '../life.ts';
import { did, even } from '../work.ts';

const DAYS = [1, 3, 5, 6];
/** Clean reps of 25 on the twelve push-up days of weeks 9 to 12. */
const REPS = [24, 25, 24, 24, 23, 24, 22, 21, 20, 19, 18, 17];

/** Handstand push-ups at 52: slipping on night shifts, tingling hands, a limit, and handed to a colleague. */
export function padraig(today: string): DemoClient {
  const life = startLife(today, {
    slug: 'padraig',
    name: 'Pádraig Ó Conaill',
    zone: 'Europe/Dublin',
    coach: 'second',
    goal: 'A handstand push-up, chest to wall, head to floor.',
    goalSkills: ['Handstand push-up'],
    birthYear: Number(today.slice(0, 4)) - 52,
    bodyMassKg: 79,
    week: { days: 4, minutes: 45, effort: 6 },
    joined: demoDate(today, 1, 1),
    note: 'Blood pressure treated; doctor agreed to upside-down work, letter on file. Nurse, night shifts.',
    answers: {
      training: 'four sessions of 45 minutes',
      kit: 'floor, box, low bars, mat',
      health: 'high blood pressure, treated; doctor agreed in writing',
    },
  });
  for (let week = 1; week <= 26; week++) {
    for (const [turn, day] of DAYS.entries()) life.train(life.on(week, day), dayOf(week, turn));
  }
  story(life);
  return finish(life);
}

function dayOf(week: number, turn: number): Training {
  const easy = week === 13;
  const done: Training = {
    session: turn === 3 ? 'B' : 'A',
    effort: easy ? 4 : 7,
    minutes: easy ? 30 : 44 + ((week + turn) % 3),
    work: workOf(week, turn),
  };
  if (week === 17 && turn === 1)
    done.signs = [
      { sign: 'numb-or-tingling', goneWithinMinute: false, region: 'hand-fingers', side: 'left' },
    ];
  if (week === 17 && turn === 1)
    done.words = 'Both hands tingle since the pike push-ups. Still there after tea.';
  if (week === 11 && turn === 2) done.words = 'Third night shift of the week.';
  return done;
}

function workOf(week: number, turn: number): HistorySet[][] {
  const upright = [did('LS.2', [11, 11, 11, turn === 2 ? 9 : 11], { planned: 11 }), even('RS.1', 22)];
  if (turn === 3) return [even('PU.4', 4), ...upright];
  if (week > 17 && week < 22) return [even('U1.1', 7), ...upright];
  if (week === 17 && turn > 1) return upright;
  return [pushUps(week, turn), ...upright];
}

function pushUps(week: number, turn: number): HistorySet[] {
  const total =
    week >= 9 && week <= 12
      ? (REPS[(week - 9) * 3 + turn] ?? 24)
      : week === 13
        ? 15
        : week >= 22
          ? 22 + (turn % 2)
          : turn === 1
            ? 23
            : 24;
  const sets = week === 13 ? 3 : 5;
  return did(week < 6 ? 'U1.4' : 'U1.5', spread(total, sets), { planned: 5 });
}

/** Full sets of five first; what is missing is taken from the last set, then from the one before. */
function spread(total: number, sets: number): number[] {
  const values = Array.from({ length: sets }, () => 5);
  let missing = sets * 5 - total;
  for (let place = sets - 1; missing > 0 && place >= 0; place--) {
    const taken = Math.min(missing, 4);
    values[place] = 5 - taken;
    missing -= taken;
  }
  return values;
}

function story(life: Life): void {
  const { on } = life;
  const skills = ['Handstand push-up'];
  const upright: PlanItem[] = [
    ['A', 'LS.2', { target: 11, times: 4 }],
    ['A', 'RS.1', { target: 22, times: 4 }],
    ['B', 'PU.4', { target: 4, times: 1 }],
  ];
  life.plan(on(1, 1), {
    perWeek: 4,
    skills,
    items: [['A', 'U1.4', { times: 3 }], ...upright],
    why: 'Strength first.',
  });
  life.plan(on(6, 1), {
    perWeek: 4,
    skills,
    items: [['A', 'U1.5', { times: 3 }], ...upright],
    easyWeeks: [on(13, 1)],
    why: 'Strength first; balance when the pike is easy.',
  });
  life.plan(on(17, 4), {
    perWeek: 4,
    skills,
    items: [['A', 'U1.1', { target: 7, times: 3 }], ...upright],
    why: 'Nothing overhead until the clinician says so.',
  });
  life.plan(on(22, 1), {
    perWeek: 4,
    until: on(24, 7),
    skills,
    items: [['A', 'U1.5', { times: 3 }], ...upright],
    why: 'Back to the pike push-up, same number as before.',
  });
  life.plan(on(25, 2), {
    perWeek: 4,
    skills,
    items: [['A', 'U1.5', { times: 3 }], ...upright],
    why: 'Goes on; looked at again in six weeks.',
  });
  for (const [rung, week] of [
    ['U1.4', 1],
    ['LS.2', 1],
    ['RS.1', 1],
    ['PU.4', 1],
  ] as const)
    life.place(rung, on(week, 1), { why: 'start test' });
  life.place('U1.5', on(6, 1), { why: 'last rep looks like the first' });
  life.place('U1.1', on(17, 4), { why: 'nothing overhead' });
  life.place('U1.5', on(22, 1), { why: 'limit ended' });
  life.step({
    kind: 'slipping',
    takenOn: on(13, 1),
    ladderId: 'U1',
    side: 'both',
    reviewOn: on(18, 1),
    words: 'Easy week; night shifts',
  });
  life.step({
    kind: 'danger-sign',
    takenOn: on(17, 4),
    ladderId: null,
    side: null,
    reviewOn: on(19, 3),
    words: 'Overhead stopped, sent to a clinician',
  });
  life.limit({
    tissue: 'shoulder-overhead',
    region: null,
    side: null,
    rule: 'no-overhead',
    percent: null,
    from: on(17, 4),
    until: on(21, 7),
    who: 'family doctor',
  });
  life.limit({
    tissue: 'neck',
    region: null,
    side: null,
    rule: 'none',
    percent: 0,
    from: on(17, 4),
    until: on(21, 7),
    who: 'family doctor',
  });
  life.clinician({
    date: on(19, 3),
    region: 'hand-fingers',
    side: 'left',
    words: 'Nerve pressed at the wrist while tired; settled. Overhead again after week 21, in steps.',
  });
  const friday = onWeekday(on(15, 1), 5);
  life.ask(life.at(friday, '17:30'), 'Can I do the push-ups on bars when the wrists are tired?', {
    at: life.at(addDays(friday, 5), '09:10'),
    text: 'Yes, same depth, on the low bars.',
  });
  life.extra.privateNotes.push({
    at: life.at(on(21, 2), '10:00'),
    text: 'Handed to Tobias: asked for a film on the 3rd; promised an answer about bars.',
  });
  life.seenBetween(on(1, 1), on(21, 5));
  life.seenBetween(on(24, 2), on(26, 7));
}
