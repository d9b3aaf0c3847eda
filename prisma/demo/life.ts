import type {
  AnsweringHours,
  ClientHistory,
  HistoryAbsence,
  HistoryCheckIn,
  HistoryClient,
  HistoryFilm,
  HistoryLimit,
  HistoryPain,
  HistoryPlanItem,
  HistorySet,
  HistoryStep,
} from '#lib/domain/history.ts';
import type { IntakeAnswers } from '#lib/domain/intake/answers.ts';
import type { HealthQuestion } from '#lib/domain/intake/health-questions.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { addDays, demoDate, instantAt } from './calendar.ts';
import { type Random, seededRandom } from './random.ts';
import { demoRung } from './rungs.ts';

/** Mondays to Fridays, the whole day: a question of Friday evening is old on Tuesday, not on Sunday. */
export const DEMO_ANSWERING: AnsweringHours = {
  zone: 'Europe/Madrid',
  days: [1, 2, 3, 4, 5],
  from: '00:00',
  to: '23:59',
};

/** What was told at a start page by page, and what became of each yes. Dates are the client's own. */
export type DemoStart = {
  answers: IntakeAnswers;
  holds: { told: HealthQuestion; from: string; until: string | null }[];
  words: {
    told: HealthQuestion;
    date: string;
    clinician: string;
    words: string;
    reviewOn: string | null;
  }[];
  changes: { at: string; field: string; before: unknown; after: unknown; why: string }[];
};

/** What the tables hold beside the history of a demo client. */
export type DemoExtra = {
  slug: string;
  coach: 'lead' | 'second';
  goal: string;
  goalSkills: string[];
  birthYear: number;
  note: string;
  sessionMinutes: number;
  guardian: string | null;
  answers: Record<string, string>;
  /** A start that is written out page by page. */
  start?: DemoStart | undefined;
  planWhy: Map<number, string>;
  placementWhy: Map<string, string>;
  /** A check-in as first sent, before the client corrected it. */
  corrected: { first: HistoryCheckIn; correctedBy: string; at: string }[];
  coachWords: { at: string; text: string; checkInId: string | null }[];
  privateNotes: { at: string; text: string }[];
  /** What to film, for each film of the history. */
  films: { id: string; rungKey: string; side: Side; angle: string; by: string }[];
};
export type DemoClient = { history: ClientHistory; extra: DemoExtra };

export type Training = {
  session?: string;
  effort: number;
  minutes: number;
  work: HistorySet[][];
  pain?: HistoryPain[];
  signs?: HistoryCheckIn['dangerSigns'];
  ground?: HistoryCheckIn['ground'];
  words?: string;
  at?: string;
};
export type PlanItem = [
  session: string,
  rung: string,
  options?: { sets?: number; target?: number; times?: number },
];
export type PlanWanted = {
  perWeek: number;
  until?: string | null;
  skills: string[];
  items: PlanItem[];
  easyWeeks?: string[];
  why?: string;
};
export type Life = ReturnType<typeof startLife>;

type Start = {
  slug: string;
  name: string;
  zone: string;
  coach?: 'lead' | 'second';
  goal: string;
  goalSkills: string[];
  birthYear: number;
  bodyMassKg: number;
  week: { days: number; minutes: number; effort: number };
  /** Week and day of the demo on which the client joined. */
  joined: string;
  intakePain?: HistoryClient['intakePain'];
  standing?: HistoryClient['standing'];
  guardian?: string;
  note?: string;
  answers?: Record<string, string>;
};

/** A client's life, written day by day. Everything goes into one history; nothing is read from a clock. */
export function startLife(today: string, start: Start) {
  const random = seededRandom(start.slug);
  const history = emptyHistory(today, start, random);
  const extra = emptyExtra(start);
  const on = (week: number, day: number) => demoDate(today, week, day);
  const at = (date: string, time: string) => instantAt(date, time, start.zone);

  const send = (checkIn: Omit<HistoryCheckIn, 'id' | 'zone' | 'sentAt'>, time: string): HistoryCheckIn => {
    const sent = { id: random.uuid(), zone: start.zone, sentAt: at(checkIn.date, time), ...checkIn };
    history.checkIns.push(sent);
    return sent;
  };

  return {
    history,
    extra,
    random,
    today,
    on,
    at,
    train(date: string, done: Training): HistoryCheckIn {
      const pain = done.pain ?? [];
      return send(
        {
          date,
          kind: 'training',
          session: done.session ?? 'A',
          effort: done.effort,
          minutes: done.minutes,
          ground: done.ground ?? 'hard-floor',
          sleepHours: null,
          nothingHurts: pain.length === 0,
          sets: done.work.flat(),
          pain,
          dangerSigns: done.signs ?? [],
          words: done.words ?? '',
        },
        done.at ?? `${random.whole(17, 19)}:${random.whole(10, 55)}`,
      );
    },
    rest(date: string, told: { pain?: HistoryPain[]; words?: string } = {}): HistoryCheckIn {
      const pain = told.pain ?? [];
      return send(
        {
          date,
          kind: 'rest',
          session: null,
          effort: null,
          minutes: null,
          ground: null,
          sleepHours: null,
          nothingHurts: pain.length === 0,
          sets: [],
          pain,
          dangerSigns: [],
          words: told.words ?? '',
        },
        '19:20',
      );
    },
    plan(from: string, wanted: PlanWanted): void {
      const version = history.plans.length + 1;
      history.plans.push({
        version,
        from,
        until: wanted.until ?? null,
        sessionsPerWeek: wanted.perWeek,
        items: wanted.items.flatMap((item) => planItems(item, wanted)),
        easyWeeks: wanted.easyWeeks ?? [],
        testWeeks: [],
        acceptedWeekAu: null,
        skillsInFocus: wanted.skills,
      });
      if (wanted.why) extra.planWhy.set(version, wanted.why);
    },
    place(rungKey: string, from: string, options: { side?: Side; why?: string } = {}): void {
      const rung = demoRung(rungKey);
      const sides: Side[] = options.side ? [options.side] : rung.eachSide ? ['left', 'right'] : ['both'];
      for (const side of sides) {
        history.placements.push({ ladderId: rung.ladderId, side, rungId: rung.id, from });
        if (options.why) extra.placementWhy.set(`${rung.ladderId} ${side} ${from}`, options.why);
      }
    },
    absence: (absence: HistoryAbsence) => history.absences.push(absence),
    limit: (limit: HistoryLimit) => history.limits.push(limit),
    step: (step: HistoryStep) => history.steps.push(step),
    clinician: (word: ClientHistory['clinicianWords'][number]) => history.clinicianWords.push(word),
    ask(askedAt: string, text: string, answered: { at: string; text: string } | null): void {
      history.questions.push({
        id: random.uuid(),
        askedAt,
        text,
        answeredAt: answered?.at ?? null,
        answer: answered?.text ?? null,
      });
    },
    film(
      what: { rungKey: string; side: Side; angle: string; words: string; by: string },
      times: Omit<HistoryFilm, 'id' | 'words'>,
    ): void {
      const id = random.uuid();
      history.films?.push({ id, words: what.words, ...times });
      extra.films.push({ id, rungKey: what.rungKey, side: what.side, angle: what.angle, by: what.by });
    },
    /** A coach looks at the client every few days, from the first date to the last. */
    seenBetween(from: string, to: string, every = 4): void {
      for (let date = from; date <= to; date = addDays(date, every)) history.seen.push(at(date, '08:10'));
    },
  };
}

function emptyHistory(today: string, start: Start, random: Random): ClientHistory {
  const { days, minutes, effort } = start.week;
  return {
    formatVersion: 1,
    client: {
      id: random.uuid(),
      name: start.name,
      zone: start.zone,
      standing: start.standing ?? 'in-training',
      invitedAt: instantAt(addDays(start.joined, -2), '10:00', start.zone),
      joinedAt: instantAt(start.joined, '09:00', start.zone),
      under18: Number(today.slice(0, 4)) - start.birthYear < 18,
      bodyMassKg: start.bodyMassKg,
      toldWeekAu: days * minutes * effort,
      intakePain: start.intakePain ?? [],
    },
    rungs: [],
    plans: [],
    placements: [],
    absences: [],
    checkIns: [],
    questions: [],
    limits: [],
    steps: [],
    seen: [],
    clinicianWords: [],
    films: [],
    answering: DEMO_ANSWERING,
  };
}

function emptyExtra(start: Start): DemoExtra {
  return {
    slug: start.slug,
    coach: start.coach ?? 'lead',
    goal: start.goal,
    goalSkills: start.goalSkills,
    birthYear: start.birthYear,
    note: start.note ?? '',
    sessionMinutes: start.week.minutes,
    guardian: start.guardian ?? null,
    answers: start.answers ?? {},
    planWhy: new Map(),
    placementWhy: new Map(),
    corrected: [],
    coachWords: [],
    privateNotes: [],
    films: [],
  };
}

function planItems([session, key, options = {}]: PlanItem, plan: PlanWanted): HistoryPlanItem[] {
  const rung = demoRung(key);
  const sides: Side[] = rung.eachSide ? ['left', 'right'] : ['both'];
  const sessions = new Set(plan.items.map(([label]) => label)).size;
  return sides.map((side) => ({
    session,
    rungId: rung.id,
    side,
    sets: options.sets ?? rung.pass.sets,
    target: options.target ?? rung.pass.target,
    minutes: null,
    timesPerWeek: options.times ?? plan.perWeek / sessions,
  }));
}
