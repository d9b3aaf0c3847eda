import { localDateOf } from '#lib/domain/local-date.ts';
import { clockTime } from './local-time.ts';
import { type FailureWords, failureInWords } from './night-failure.ts';
import { isDoneSoFar, laterWords } from './night-so-far.ts';
import { exactDate, saidDate } from './say-date.ts';

/** As in the database function `owed_nights_of`: after five tries a night waits for a person. */
const TRIES = 5;
/** More new rows a morning than this for so many clients, outside now and today, are a fault of the checks (own choice). */
const NEW_ROWS = { most: 20, clients: 120, least: 5 };

export type NightRun = {
  localDate: string;
  startedAt: Date;
  finishedAt: Date | null;
  clientsDue: number;
  clientsDone: number;
  clientsFailed: number;
  /** Of those due: where they live it is not 03:00 yet. */
  clientsLater: number;
  rulesVersion: string;
  settingsFrom: number | null;
  settingsTo: number | null;
};
export type NightFailure = {
  localDate: string;
  clientId: string;
  name: string;
  attempts: number;
  failure: string;
};
export type FailedClient = FailureWords & { clientId: string; name: string; tries: string };
export type NightLine =
  | {
      kind: 'run';
      localDate: string;
      said: string;
      exact: string;
      started: string;
      took: string;
      checked: string;
      versions: string;
      newRows: { count: number; most: number; over: boolean };
      failed: FailedClient[];
    }
  /** Nights that the ledger left out: too long ago to be caught up when the worker was there again. */
  | { kind: 'gap'; from: string; words: string };
export type LeftOutSpan = { from: string; to: string; nights: number; clients: number };

type Input = {
  runs: readonly NightRun[];
  failed: readonly NightFailure[];
  newRows: readonly { localDate: string; clients: number }[];
  leftOut: readonly LeftOutSpan[];
  today: string;
  zone: string;
  /** Nights from this date on are still caught up. */
  caughtUpFrom: string;
};

/** The runs of a page, newest first, in words; between them what was left out. Times are the reader's. */
export function nightLines(input: Input): NightLine[] {
  const runs = input.runs.map((run) => ({ on: run.localDate, line: toLine(run, input) }));
  const gaps = input.leftOut.map((span) => ({ on: span.to, line: toGap(span, input.today) }));
  return [...runs, ...gaps].sort((a, b) => (a.on < b.on ? 1 : a.on > b.on ? -1 : 0)).map(({ line }) => line);
}

/** How many new rows a morning may bring this many clients, outside now and today. */
export function mostNewRows(clients: number): number {
  return Math.max(NEW_ROWS.least, Math.round((NEW_ROWS.most * clients) / NEW_ROWS.clients));
}

function toLine(run: NightRun, { failed, newRows, today, zone, caughtUpFrom }: Input): NightLine {
  const count = newRows.find((row) => row.localDate === run.localDate)?.clients ?? 0;
  const most = mostNewRows(run.clientsDone);
  const startedOn = localDateOf(run.startedAt, zone);
  return {
    kind: 'run',
    localDate: run.localDate,
    said: saidDate(run.localDate, today),
    exact: exactDate(run.localDate),
    started: `${saidDate(startedOn, today)} ${clockTime(run.startedAt, zone)}`,
    took: tookWords(run),
    checked: checkedWords(run),
    versions: versionWords(run),
    newRows: { count, most, over: count > most },
    failed: failed
      .filter((row) => row.localDate === run.localDate)
      .map((row) => ({
        clientId: row.clientId,
        name: row.name,
        ...failureInWords(row.failure),
        tries: triesWords(row, caughtUpFrom),
      })),
  };
}

function checkedWords({ clientsDone, clientsDue, clientsLater }: NightRun): string {
  if (clientsDone === clientsDue) return `all ${clientsDue}`;
  const later = laterWords(clientsLater);
  return `${clientsDone} of ${clientsDue}${later && `; ${later}`}`;
}

function tookWords(run: NightRun): string {
  const { startedAt, finishedAt, clientsDue, clientsDone, clientsFailed, clientsLater } = run;
  const counts = { due: clientsDue, done: clientsDone, failed: clientsFailed, later: clientsLater };
  if (!finishedAt) return isDoneSoFar(counts) ? 'goes on' : 'not finished';
  const seconds = Math.round((finishedAt.getTime() - startedAt.getTime()) / 1000);
  if (seconds < 60) return seconds === 1 ? '1 second' : `${seconds} seconds`;
  const minutes = Math.round(seconds / 60);
  if (minutes < 120) return minutes === 1 ? '1 minute' : `${minutes} minutes`;
  return `${Math.round(minutes / 60)} hours`;
}

function versionWords({ rulesVersion, settingsFrom, settingsTo }: NightRun): string {
  const rules = `rules ${rulesVersion}`;
  if (settingsFrom === null || settingsTo === null) return rules;
  if (settingsTo === 0) return `${rules}, settings as delivered`;
  return settingsFrom === settingsTo
    ? `${rules}, settings ${settingsTo}`
    : `${rules}, settings ${settingsFrom} to ${settingsTo}`;
}

function triesWords({ attempts, localDate }: NightFailure, caughtUpFrom: string): string {
  const tried = attempts === 1 ? 'tried once' : `tried ${attempts} times`;
  if (localDate < caughtUpFrom) return `${tried}, too long ago to be tried again`;
  return attempts >= TRIES
    ? `${tried}, waits for you to run it again`
    : `${tried}, tried again within 15 minutes`;
}

/** True once a night is not tried again by itself. */
export function isGivenUp(failure: { attempts: number }): boolean {
  return failure.attempts >= TRIES;
}

function toGap({ from, to, nights, clients }: LeftOutSpan, today: string): NightLine {
  const span = from === to ? saidDate(from, today) : `${saidDate(from, today)} to ${saidDate(to, today)}`;
  const which = nights === 1 ? '1 night' : `${nights} nights`;
  const whose = clients === 1 ? '1 client' : `${clients} clients`;
  const [were, are] = nights === 1 ? ['was', 'is'] : ['were', 'are'];
  return {
    kind: 'gap',
    from,
    words: `${span}: ${which} of ${whose} ${were} not run and ${are} too long ago to be caught up. The checks of later nights read those days too.`,
  };
}
