import { setTimeout } from 'node:timers/promises';
import { Gauge, Registry } from 'prom-client';
import { NIGHTS_BACK } from '#lib/db/ledger.ts';
import { countOwedNights, countUnfinishedAtSix, listWaitingKinds } from '#lib/db/operation.ts';
import { queueFigures } from '#lib/jobs/queue-figures.ts';
import { metrics } from '#lib/metrics.ts';

/** A scrape that waits longer tells nothing about the rest. */
const PATIENCE_MS = 3_000;
/** Kinds that are handed to somebody: they are shown with 0 too, so that an alarm has something to compare. */
const KINDS = ['after-check-in', 'mail', 'push'];

/** Everything that a Prometheus asks for, as its text: this process's counters, and what the database and queue hold. */
export async function operationFigures(now: Date): Promise<{ text: string; contentType: string }> {
  const shared = new Registry();
  const parts = await Promise.all([
    inTime('database', () => addDatabase(shared, now)),
    inTime('queue', () => addQueues(shared, now)),
  ]);
  const up = gauge(shared, 'plumbline_up', 'Whether this part answered', ['part']);
  for (const { part, ok } of parts) up.set({ part }, ok ? 1 : 0);
  const all = Registry.merge([metrics().registry, shared]);
  return { text: await all.metrics(), contentType: all.contentType };
}

async function addDatabase(registry: Registry, now: Date): Promise<void> {
  const [kinds, owed, unfinished] = [
    await listWaitingKinds(now),
    await countOwedNights(now, NIGHTS_BACK),
    await countUnfinishedAtSix(now, NIGHTS_BACK),
  ];
  const waiting = gauge(registry, 'plumbline_outbox_waiting', 'Things that wait in the outbox', ['kind']);
  const oldest = gauge(registry, 'plumbline_outbox_oldest_seconds', 'How long the oldest waits', ['kind']);
  for (const kind of new Set([...KINDS, ...kinds.map((each) => each.kind)])) {
    const found = kinds.find((each) => each.kind === kind);
    waiting.set({ kind }, found?.waiting ?? 0);
    oldest.set({ kind }, found?.oldestSeconds ?? 0);
  }
  gauge(registry, 'plumbline_nights_owed', 'Nights of clients that are owed and not run').set(owed.nights);
  gauge(registry, 'plumbline_nights_owed_clients', 'Clients who are owed a night').set(owed.clients);
  const late = 'Nights of clients that were not finished at 06:00 where the client lives';
  gauge(registry, 'plumbline_nights_unfinished_at_six', late).set(unfinished);
}

async function addQueues(registry: Registry, now: Date): Promise<void> {
  const figures = await queueFigures(now);
  const jobs = gauge(registry, 'plumbline_queue_jobs', 'Jobs in a queue, by state', ['queue', 'state']);
  const oldest = gauge(registry, 'plumbline_queue_oldest_seconds', 'How long the oldest job waits', [
    'queue',
  ]);
  for (const { queue, oldestSeconds, ...states } of figures) {
    for (const [state, count] of Object.entries(states)) jobs.set({ queue, state }, count);
    oldest.set({ queue }, oldestSeconds);
  }
}

function gauge<Label extends string>(
  registry: Registry,
  name: string,
  help: string,
  labelNames: Label[] = [],
) {
  return new Gauge({ name, help, labelNames, registers: [registry] });
}

async function inTime(part: string, work: () => Promise<void>): Promise<{ part: string; ok: boolean }> {
  const late = setTimeout(PATIENCE_MS, false, { ref: false });
  const done = work().then(
    () => true,
    () => false,
  );
  return { part, ok: await Promise.race([done, late]) };
}
