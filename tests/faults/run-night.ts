import { AT } from './night.ts';
import { pause } from './pause.ts';
import type { Stage } from './stage.ts';

const OWED = 'select count(*)::int as n from owed_nights($1, 14)';
const DONE = 'select count(*)::int as n from night_client where done_at is not null and rules_version <> $1';
/** So long without any progress: a lock of the queue that nobody lets run out by hand is over well before. */
const PATIENCE_MS = 90_000;
/** Without progress for so long the quarter of an hour is over, and the schedule ticks. */
const QUIET_MS = 4_000;

/** How many nights the team owes at that instant. */
export async function owedAt(stage: Stage, at = AT): Promise<number> {
  return (await stage.sql<{ n: number }>(OWED, [at]))[0]?.n ?? 0;
}

export async function doneNights(stage: Stage): Promise<number> {
  return (await stage.sql<{ n: number }>(DONE, ['earlier']))[0]?.n ?? 0;
}

type Waiting = {
  at?: string;
  /** What else happens with time, besides the tick. */
  onQuiet?: () => Promise<void>;
  /** False: the worker has to come to it by itself. */
  ticks?: boolean;
};

/** Waits until nothing is owed. */
export async function nightsDone(
  stage: Stage,
  { at = AT, onQuiet, ticks = true }: Waiting = {},
): Promise<void> {
  let last = -1;
  let since = Date.now();
  let moved = Date.now();
  for (;;) {
    const done = await doneNights(stage).catch(() => last);
    if (done !== last) [last, since, moved] = [done, Date.now(), Date.now()];
    if (Date.now() - since > 300 && (await owedAt(stage, at).catch(() => 1)) === 0) return;
    if (Date.now() - since > QUIET_MS) {
      await onQuiet?.();
      if (ticks) await stage.tick();
      since = Date.now();
    }
    if (Date.now() - moved > PATIENCE_MS)
      throw new Error(`the night was not finished: ${last} done, ${await owedAt(stage, at)} owed`);
    await pause(100);
  }
}

/** Waits until so many nights are done, as a share of what is owed. */
export async function untilShare(stage: Stage, owed: number, share: number): Promise<number> {
  for (let tries = 0; tries < 3_000; tries += 1) {
    const done = await doneNights(stage);
    if (done >= owed * share) return done;
    await pause(15);
  }
  throw new Error('the night does not come on');
}
