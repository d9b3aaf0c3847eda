import { type TeamScope, withTeamPg } from '#lib/db/client.ts';
import { listOwedNightsOf, NIGHTS_BACK } from '#lib/db/ledger.ts';
import {
  type FailedClientRow,
  listFailedNights,
  listNightRuns,
  type NightRunRow,
} from '#lib/db/night-runs.ts';
import { addDays, daysBetween, localDateOf } from '#lib/domain/local-date.ts';

const RUNS_SHOWN = 30;
/** As in the database function `owed_nights_of`. */
const TRIES = 5;

type FailedClient = { clientId: string; name: string; words: string };
export type NightLine =
  | {
      kind: 'run';
      localDate: string;
      startedAt: string;
      /** Whole minutes, rounded down; null while it runs. */
      minutes: number | null;
      due: number;
      done: number;
      failed: FailedClient[];
    }
  /** Dates between two runs that no run covered and that are too long ago to be caught up. */
  | { kind: 'gap'; from: string; to: string; nights: number };

export type NightsView = {
  lines: NightLine[];
  owed: { clients: number; nights: number };
  /** Nights that failed and are not tried again by themselves. */
  givenUp: number;
};

/** What the page about nights shows: each run, what failed and why, what was left out, what is owed now. */
export async function loadNights(scope: TeamScope, now: Date): Promise<NightsView> {
  const { runs, failed } = await withTeamPg(scope, async (tx) => {
    const runs = await listNightRuns(tx, RUNS_SHOWN);
    const oldest = runs.at(-1)?.localDate ?? localDateOf(now, 'UTC');
    return { runs, failed: await listFailedNights(tx, oldest) };
  });
  const owed = await listOwedNightsOf(scope, null, now);
  const caughtUpFrom = addDays(localDateOf(now, 'UTC'), -NIGHTS_BACK);
  return {
    lines: runs.flatMap((run, index) => [
      toLine(run, failed),
      ...gapBefore(run, runs[index + 1], caughtUpFrom),
    ]),
    givenUp: failed.filter((row) => row.attempts >= TRIES).length,
    owed: { clients: new Set(owed.map((night) => night.clientId)).size, nights: owed.length },
  };
}

function toLine(run: NightRunRow, failed: FailedClientRow[]): NightLine {
  return {
    kind: 'run',
    localDate: run.localDate,
    startedAt: run.startedAt.toISOString(),
    minutes: run.finishedAt && Math.floor((run.finishedAt.getTime() - run.startedAt.getTime()) / 60_000),
    due: run.clientsDue,
    done: run.clientsDone,
    failed: failed
      .filter((row) => row.localDate === run.localDate)
      .map((row) => ({ clientId: row.clientId, name: row.name, words: failureInWords(row) })),
  };
}

function gapBefore(run: NightRunRow, older: NightRunRow | undefined, caughtUpFrom: string): NightLine[] {
  if (!older) return [];
  const [from, to] = [addDays(older.localDate, 1), addDays(run.localDate, -1)];
  if (from > to || to >= caughtUpFrom) return [];
  return [{ kind: 'gap', from, to, nights: daysBetween(from, to) + 1 }];
}

function failureInWords({ attempts, failure }: FailedClientRow): string {
  const tries = attempts === 1 ? 'tried once' : `tried ${attempts} times`;
  const next = attempts >= TRIES ? 'waits for you to run it again' : 'tried again within 15 minutes';
  return `a check could not read this history (${failure || 'no error was written'}); ${tries}, ${next}`;
}
