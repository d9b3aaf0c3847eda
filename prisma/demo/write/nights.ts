import { teamScope } from '#lib/db/client.ts';
import { runNightBatch } from '#lib/usecases/run-night-batch.ts';
import { addDays, instantAt } from '../calendar.ts';
import type { DemoClient } from '../life.ts';

/** Standings that have a night. */
const WITH_NIGHTS = ['starting', 'in-training', 'ending', 'back'];

/**
 * Runs the last nights through the same use case as the worker's, oldest first, each at the time it would have run.
 * Dates are each client's own; a night that is not due yet where the client lives is left to the worker.
 */
export async function runDemoNights(
  teamId: string,
  clients: DemoClient[],
  span: { today: string; nights: number; now: Date },
): Promise<number> {
  let done = 0;
  for (let back = span.nights; back >= 1; back--) {
    const localDate = addDays(span.today, -back);
    const due = clients.filter(({ history: { client } }) => {
      const joined = client.joinedAt?.slice(0, 10) ?? '';
      return (
        WITH_NIGHTS.includes(client.standing) &&
        joined <= localDate &&
        dueAt(localDate, client.zone) <= span.now
      );
    });
    const noon = new Date(`${addDays(localDate, 1)}T16:00:00Z`);
    const result = await runNightBatch(
      teamScope(teamId),
      { localDate, clientIds: due.map(({ history }) => history.client.id) },
      noon < span.now ? noon : span.now,
    );
    done += result.done;
  }
  return done;
}

function dueAt(localDate: string, zone: string): Date {
  return new Date(instantAt(addDays(localDate, 1), '03:00', zone));
}
