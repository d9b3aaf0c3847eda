import type { Actor } from '#lib/auth/actor.ts';
import { type CheckInWord, listCheckInWords } from '#lib/db/check-in-words.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { listSeen } from '#lib/db/clients.ts';
import { listHistoryRungs } from '#lib/db/history-rungs.ts';
import { findPhonePlan, type PhonePlan } from '#lib/db/phone-plan.ts';
import {
  findLastSeen,
  findPhoneClient,
  listLaddersOf,
  listOpenFilmRequests,
  listRecentCheckIns,
  listSaidByCoach,
  listStanding,
  type PhoneClient,
  type SaidByCoach,
} from '#lib/db/phone-reads.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import type { EarlierRow } from '#lib/views/phone-earlier.ts';
import { limitSession, limitsInWords } from '#lib/views/phone-limits.ts';
import { type MorningQuestion, morningQuestion } from '#lib/views/phone-morning.ts';
import { type OtherDrill, otherDrills } from '#lib/views/phone-other-drills.ts';
import { type PhoneSession, phoneSession } from '#lib/views/phone-session.ts';
import { itemsOnDate, weekInWords } from '#lib/views/phone-week.ts';
import { wordsAbout, wordsOnDay } from '#lib/views/phone-words.ts';
import { firstSeen } from '#lib/views/timeline-words.ts';
import { isBackAsNew } from './intake/asked-anew.ts';
import { type StartOfToday, startOfToday } from './intake/start-of-today.ts';
import { type PlanNews, planNews } from './plan-news.ts';
import { startTestsWaiting } from './start/load-own-tests.ts';
import { underLimits } from './under-limits.ts';

/** How far back "the last time" is looked for: days (own choice). */
const LAST_TIME_DAYS = 92;
/** A session of this name is a stand-in and never the next one by turn. */
const STAND_IN = 'short';

/** A check-in of today with what coaches wrote on it and who looked. */
export type DoneCheckIn = { checkIn: HistoryCheckIn } & Pick<EarlierRow, 'said' | 'seen'>;

export type Today = {
  clientId: string;
  client: PhoneClient;
  date: string;
  /** What comes before training. Under 18 without a yes of a parent or guardian there are no sessions. */
  start: StartOfToday;
  planVersion: number | null;
  planEnded: string | null;
  /** What is special about this week of the plan, in plain lines. */
  week: string[];
  /** The coach's words about this version. */
  planNotes: string;
  news: PlanNews;
  /** Sessions of the plan; the first one is the next by turn. */
  sessions: PhoneSession[];
  /** What can be checked in though it was not planned. */
  otherDrills: OtherDrill[];
  /** Limits in force, in words. */
  limits: string[];
  /** Today's check-ins, newest first. */
  done: DoneCheckIn[];
  /** Asked on the morning after; null: not today. */
  morning: MorningQuestion | null;
  lastPain: { region: string; side: string; value: number; date: string }[];
  /** The newest words or answer; `on`: the day and the set they are about. */
  said: (SaidByCoach & { on: string }) | null;
  seen: { by: string; at: Date } | null;
  /** The first days after twelve weeks or more away. */
  backAsNew: boolean;
  /** Start tests that wait for the client, in one line; null: none do. */
  startTests: string | null;
  films: { rungId: string; side: string; angle: string; byDate: string | null; words: string }[];
};

/** What the client sees first: what to do today, beside what was done the last time, and what the coach said. */
export async function loadToday(actor: Actor, now: Date): Promise<Today> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client has a plan for today.');
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findPhoneClient(tx, clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    const date = localDateOf(now, client.zone);
    const recent = await listRecentCheckIns(tx, clientId, addDays(date, -LAST_TIME_DAYS));
    const plan = await findPhonePlan(tx, clientId, date);
    const written = await listCheckInWords(tx, clientId, addDays(date, -LAST_TIME_DAYS));
    const words = await wordsFromCoach(tx, clientId, written);
    const marks = await listSeen(tx, clientId);
    const start = await startOfToday(tx, clientId, client, now);
    const sessions =
      plan && start.guardian === null
        ? inTurn(plan, recent).map((session) =>
            phoneSession({ ...session, items: itemsOnDate(session.items, plan, date) }, recent),
          )
        : [];
    const under = await underLimits(tx, { clientId, date, sessions });
    return {
      clientId,
      client,
      date,
      start,
      planVersion: plan?.version ?? null,
      week: plan ? weekInWords(plan, date) : [],
      planNotes: plan?.notes ?? '',
      news: await planNews(tx, { clientId, date, version: plan?.version ?? null }),
      planEnded: plan?.until && plan.until < date ? plan.until : null,
      sessions: sessions.map((session) => limitSession(session, under)),
      otherDrills: await findOtherDrills(tx, { clientId, date, recent }),
      limits: limitsInWords(under.limits, date),
      done: recent
        .filter((checkIn) => checkIn.date === date)
        .map((checkIn) => ({
          checkIn,
          said: wordsOnDay(checkIn.id, written),
          seen: firstSeen(checkIn, marks) ?? null,
        })),
      morning: morningQuestion(recent, date),
      lastPain: lastPain(recent),
      startTests: start.guardian === null ? await startTestsWaiting(tx, clientId) : null,
      backAsNew: client.standing === 'back' && (await isBackAsNew(tx, { clientId, zone: client.zone, now })),
      ...words,
    };
  });
}

type Told = { clientId: string; date: string; recent: HistoryCheckIn[] };

async function findOtherDrills(tx: TeamPg, { clientId, date, recent }: Told): Promise<OtherDrill[]> {
  const ladders = await listLaddersOf(tx, clientId);
  const done = recent.flatMap((checkIn) => checkIn.sets.map((set) => set.rungId));
  const wanted = new Set([...ladders.map((rung) => rung.rungId), ...done]);
  const rungs = (await listHistoryRungs(tx, [...wanted])).filter((rung) => wanted.has(rung.id));
  return otherDrills(rungs, await listStanding(tx, clientId, date), recent);
}

async function wordsFromCoach(
  tx: TeamPg,
  clientId: string,
  written: readonly CheckInWord[],
): Promise<Pick<Today, 'said' | 'seen' | 'films'>> {
  const [said] = await listSaidByCoach(tx, clientId, 1);
  const word = written.find((one) => one.id === said?.id);
  const seen = await findLastSeen(tx, clientId);
  return {
    said: said ? { ...said, on: word ? wordsAbout(word) : '' } : null,
    seen: seen ?? null,
    films: await listOpenFilmRequests(tx, clientId),
  };
}

/** The session after the one trained last stands first; the stand-in comes last. */
function inTurn(plan: PhonePlan, recent: HistoryCheckIn[]): PhonePlan['sessions'] {
  const regular = plan.sessions.filter((session) => session.label.toLowerCase() !== STAND_IN);
  const others = plan.sessions.filter((session) => session.label.toLowerCase() === STAND_IN);
  const trained = recent.find((checkIn) => regular.some((session) => session.label === checkIn.session));
  const next = regular.findIndex((session) => session.label === trained?.session) + 1;
  return [...regular.slice(next), ...regular.slice(0, next), ...others];
}

function lastPain(recent: HistoryCheckIn[]): Today['lastPain'] {
  const [last] = recent.filter((checkIn) => checkIn.pain.length > 0 || checkIn.nothingHurts);
  if (!last) return [];
  return last.pain.map(({ region, side, value }) => ({ region, side, value, date: last.date }));
}
