import { setImmediate } from 'node:timers/promises';
import { RULES_VERSION } from '#lib/checks/thresholds.ts';
import { mostDaysSeen } from '#lib/checks/view.ts';
import { type TeamPg, type TeamScope, withTeamPg } from '#lib/db/client.ts';
import { HISTORY_DAYS, type HistoryOptions, openHistories } from '#lib/db/histories.ts';
import {
  countNightRun,
  type FailedNight,
  type FinishedNight,
  insertFailedNights,
  insertFinishedNights,
  listDueClients,
  lockClients,
} from '#lib/db/ledger.ts';
import { insertOutcomes, type NewOutcome } from '#lib/db/outcomes.ts';
import { listReasons } from '#lib/db/reasons.ts';
import { listSettings } from '#lib/db/settings.ts';
import type { Outcome } from '#lib/domain/finding.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { errorInWords } from './error-in-words.ts';
import { dueOutcomes, outcomesOf } from './follow-outcomes.ts';
import { judgeClient } from './judge-client.ts';
import type { UsualTimes } from './usual-times.ts';
import { type JudgedClient as Judged, writeJudgements } from './write-judgements.ts';

/** Judged one after the other before others of the process have their turn. */
const CLIENTS_AT_A_STRETCH = 10;

export type NightBatchInput = { localDate: string; clientIds: string[] };
export type NightBatchResult = { done: number; failed: number };
/** With what the windows that ended came to. */
type JudgedClient = Judged & { followed: NewOutcome[] };

/**
 * Runs one local date for some clients of one team in one transaction: histories and reasons in, checks, changes,
 * ledger out. Whoever has a finished row already is left alone, so twice is as once. A client whose checks throw is
 * written down as failed; the others go on. Throws where the database is away or busy: then nothing was written.
 */
export async function runNightBatch(
  scope: TeamScope,
  input: NightBatchInput,
  now: Date,
  usualTimes?: UsualTimes,
): Promise<NightBatchResult> {
  try {
    return await runTogether(scope, input, now, usualTimes);
  } catch (error) {
    if (!isOfTheData(error)) throw error;
    const [only, ...others] = input.clientIds;
    if (only && others.length === 0) return writeFailure(scope, only, { ...input, now, error });
    const total = { done: 0, failed: 0 };
    for (const clientId of input.clientIds) {
      const alone = await runNightBatch(scope, { ...input, clientIds: [clientId] }, now, usualTimes);
      total.done += alone.done;
      total.failed += alone.failed;
    }
    return total;
  }
}

/** The database could not read or keep somebody's rows: SQLSTATE classes 21, 22 and 23. It would not at the next try. */
function isOfTheData(error: unknown): boolean {
  return isOfTheDatabase(error) && /^2[123]/.test(String(error.code));
}

function isOfTheDatabase(error: unknown): error is Error & { code: unknown } {
  return error instanceof Error && 'code' in error;
}

async function writeFailure(
  scope: TeamScope,
  clientId: string,
  { localDate, now, error }: { localDate: string; now: Date; error: unknown },
): Promise<NightBatchResult> {
  return withTeamPg(scope, async (tx) => {
    await lockClients(tx, [clientId]);
    if ((await listDueClients(tx, [clientId], localDate)).length === 0) return { done: 0, failed: 0 };
    const rulesVersion = RULES_VERSION;
    const failure = { clientId, failure: errorInWords(error) };
    await insertFailedNights(tx, { localDate, failedAt: now, rulesVersion }, [failure]);
    await countNightRun(tx, { localDate, startedAt: now, at: now, rulesVersion });
    return { done: 0, failed: 1 };
  });
}

async function runTogether(
  scope: TeamScope,
  input: NightBatchInput,
  now: Date,
  usualTimes?: UsualTimes,
): Promise<NightBatchResult> {
  const started = performance.now();
  const finishedBy = () => new Date(now.getTime() + Math.round(performance.now() - started));
  const night = async (tx: TeamPg) => {
    await lockClients(tx, input.clientIds);
    const due = await listDueClients(tx, input.clientIds, input.localDate);
    if (due.length === 0) return { done: 0, failed: 0 };
    const { judged, failed } = await judge(tx, input.localDate, due, usualTimes);
    const rest = await saveJudged(tx, input.localDate, judged, now);
    const failures = [...failed, ...rest.failed];
    await insertFailedNights(
      tx,
      { localDate: input.localDate, failedAt: now, rulesVersion: RULES_VERSION },
      failures,
    );
    await countNightRun(tx, {
      localDate: input.localDate,
      startedAt: now,
      at: finishedBy(),
      rulesVersion: RULES_VERSION,
    });
    return { done: rest.done, failed: failures.length };
  };
  return withTeamPg(scope, night, { named: true });
}

async function judge(
  tx: TeamPg,
  localDate: string,
  due: Awaited<ReturnType<typeof listDueClients>>,
  usualTimes?: UsualTimes,
) {
  const ids = due.map((client) => client.clientId);
  const [settings, stored] = await Promise.all([listSettings(tx, ids), listReasons(tx, ids)]);
  const { limits } = settings.team;
  const usual = await usualTimes?.(tx, localDate, limits);
  const ended = await dueOutcomes(tx, ids, localDate, (id) => settings.of(id).limits);
  // As far back as the checks look, and further where a window ended: it compares with days before it began.
  const daysOf = (id: string) => (ended.has(id) ? HISTORY_DAYS : mostDaysSeen(limits));
  const { histories, failed } = await loadOneOrAll(tx, ids, {
    from: (id) => addDays(localDate, -daysOf(id)),
    asOf: localDate,
    trim: true,
    limits,
    usualTimes: usual,
  });
  const judged: JudgedClient[] = [];
  for (const [at, { clientId, dueAt, nightsDone }] of due.entries()) {
    if (at % CLIENTS_AT_A_STRETCH === 0) await setImmediate(); // a check after a check-in may be waiting
    const opened = histories.get(clientId);
    if (!opened) continue;
    // As of the moment the night was due, not of now: late, or by a clock set back, it says what it would have on time.
    const asOf = { date: localDate, instant: dueAt.toISOString() };
    try {
      const history = opened();
      const reasons = stored.get(clientId) ?? [];
      const { limits } = settings.of(clientId);
      const judgement = judgeClient(history, reasons, asOf, { ...settings.of(clientId), nightsDone });
      const followed = outcomesOf(history, ended.get(clientId) ?? [], localDate, limits);
      judged.push({ judgement, asOf, stored: reasons, followed });
    } catch (error) {
      failed.push({ clientId, failure: errorInWords(error) });
    }
  }
  return { judged, failed };
}

/** All with one query for each kind of row; one by one when somebody's rows cannot be read. */
async function loadOneOrAll(tx: TeamPg, ids: string[], options: HistoryOptions) {
  const failed: FailedNight[] = [];
  try {
    return { histories: await openHistories(tx, ids, options), failed };
  } catch (error) {
    if (isOfTheDatabase(error)) throw error; // it spoilt the transaction
    const histories = new Map<string, () => ClientHistory>();
    for (const clientId of ids) {
      try {
        const one = await openHistories(tx, [clientId], options);
        for (const [id, history] of one) histories.set(id, history);
      } catch (error) {
        failed.push({ clientId, failure: errorInWords(error) });
      }
    }
    return { histories, failed };
  }
}

/** Saves all together; when the database refuses, one by one, so that only the client at fault fails. */
async function saveJudged(tx: TeamPg, localDate: string, judged: JudgedClient[], now: Date) {
  const night = { localDate, doneAt: now, rulesVersion: RULES_VERSION };
  const save = async (clients: JudgedClient[]) => {
    await tx.client.query('savepoint judged');
    await writeJudgements(tx, clients, localDate);
    await insertOutcomes(
      tx,
      clients.flatMap((client) => client.followed),
      now,
    );
    await insertFinishedNights(tx, night, clients.map(toFinished));
    await tx.client.query('release savepoint judged');
  };
  const failed: FailedNight[] = [];
  const saveOrSay = async (clients: JudgedClient[]): Promise<void> => {
    try {
      await save(clients);
    } catch (error) {
      await tx.client.query('rollback to savepoint judged'); // fails too when the connection is lost: then all of it does
      const [only, ...others] = clients;
      if (only && others.length === 0)
        failed.push({ clientId: only.judgement.clientId, failure: errorInWords(error) });
      else for (const client of clients) await saveOrSay([client]);
    }
  };
  if (judged.length > 0) await saveOrSay(judged);
  return { done: judged.length - failed.length, failed };
}

function toFinished({ judgement }: JudgedClient): FinishedNight {
  return {
    clientId: judgement.clientId,
    findings: judgement.outcomes.flatMap(shortForm),
    settingsVersion: judgement.settingsVersion,
  };
}

function shortForm(outcome: Outcome): object[] {
  if (outcome.status === 'clear') return [];
  const { kind, subject } = outcome;
  return outcome.status === 'flagged'
    ? [
        {
          status: outcome.status,
          kind,
          key: subject.key,
          level: outcome.level,
          points: outcome.points,
          short: outcome.short,
        },
      ]
    : [{ status: outcome.status, kind, key: subject.key, missing: outcome.missing }];
}
