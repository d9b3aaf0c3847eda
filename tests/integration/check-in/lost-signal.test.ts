import { randomUUID } from 'node:crypto';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { addUnsent, loadLastSent, loadUnsent } from '#app/(client)/_phone/kept.ts';
import { sendUnsent } from '#app/(client)/_phone/send-unsent.ts';
import type { Body } from '#app/(client)/_phone/to-body.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { checkInSchema } from '#lib/schemas/check-in.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { ownerQuery } from '../support/database.ts';
import { aPhone, aTraining, NOW, TODAY } from './arrange.ts';

// What the phone does with a bad line, against the real database: requests lost on the way, answers lost on the way
// back, and pages that are reloaded or closed in the middle. In the end each check-in is there once.
// A short form by default; `PLUMBLINE_SUBMITS=1000` is the whole.
const SUBMITS = Number(process.env.PLUMBLINE_SUBMITS ?? 100);
const LOST = 0.3;
const RELOADED = 0.1;

/** Mulberry32: the same losses every run. */
function chances(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** One life of a page: what it waits for when it is closed never comes back to it. */
type Life = { closed: Promise<void>; close: () => void; isClosed: boolean };
function newLife(): Life {
  let resolve = () => {};
  const closed = new Promise<void>((done) => {
    resolve = done;
  });
  const life: Life = {
    closed,
    isClosed: false,
    close: () => {
      life.isClosed = true;
      resolve();
    },
  };
  return life;
}

function memoryStorage(): Storage {
  const kept = new Map<string, string>();
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
    clear: () => kept.clear(),
    key: (at: number) => [...kept.keys()][at] ?? null,
    get length() {
      return kept.size;
    },
  };
}

let life: Life;
beforeEach(() => {
  life = newLife();
  vi.stubGlobal('window', new EventTarget());
  vi.stubGlobal('localStorage', memoryStorage());
  let last: Promise<unknown> = Promise.resolve();
  // One after the other, and let go of when the page is closed, as the browser's locks are.
  const request = (_name: string, work: () => Promise<unknown>) => {
    const ours = life;
    const turn = last.then(() => (ours.isClosed ? undefined : Promise.race([work(), ours.closed])));
    last = turn;
    return turn;
  };
  vi.stubGlobal('navigator', { locks: { request } });
});
afterEach(() => vi.unstubAllGlobals());

test(`${SUBMITS} submits with lost requests, lost answers and reloads: each is there once`, async () => {
  const phone = await aPhone('Bad line');
  const chance = chances(20_261_126);
  const order: string[] = [];
  const counts = { requests: 0, lostRequests: 0, lostAnswers: 0, reloads: 0 };
  vi.stubGlobal('fetch', async (_address: string, init: { body: string }) => {
    const ours = life;
    const hang = new Promise<never>(() => {});
    counts.requests += 1;
    if (chance() < LOST) {
      counts.lostRequests += 1;
      throw new TypeError('Failed to fetch');
    }
    const body = checkInSchema.parse(JSON.parse(init.body));
    if (chance() < RELOADED) {
      counts.reloads += 1;
      ours.close();
    }
    const answer = await submitCheckIn(phone.actor, body, NOW);
    order.push(body.id);
    if (ours.isClosed) return hang;
    if (chance() < LOST) {
      counts.lostAnswers += 1;
      throw new TypeError('Failed to fetch');
    }
    return Response.json(answer, { status: 201 });
  });

  const written: string[] = [];
  for (let at = 0; at < SUBMITS; at += 1) {
    const id = randomUUID();
    written.push(id);
    const date = addDays(TODAY, -(at % 80));
    const body = aTraining(phone, { id, date, session: `session ${at}`, sentAt: NOW.toISOString() });
    expect(addUnsent(phone.clientId, body as unknown as Body, NOW)).toBe(true);
    // Two tabs are open, and both send.
    await Promise.all([sendUnsent(phone.clientId), sendUnsent(phone.clientId)]);
    if (life.isClosed) life = newLife();
  }
  for (let again = 0; again < SUBMITS * 10 && loadUnsent(phone.clientId).length > 0; again += 1) {
    await sendUnsent(phone.clientId);
    if (life.isClosed) life = newLife();
  }

  expect(loadUnsent(phone.clientId)).toEqual([]);
  const rows = await ownerQuery<{ id: string }>('select id from check_in where client_id = $1', [
    phone.clientId,
  ]);
  expect(rows.map((row) => row.id).sort()).toEqual([...written].sort());
  // In the order in which they were written, however often each was tried.
  expect([...new Set(order)]).toEqual(written);
  expect(loadLastSent(phone.clientId)?.id).toBe(written.at(-1));
  // The line was as bad as it was meant to be.
  expect(counts.lostRequests / counts.requests).toBeGreaterThan(0.25);
  expect(counts.lostAnswers).toBeGreaterThan(SUBMITS / 5);
  expect(counts.reloads).toBeGreaterThan(SUBMITS / 20);
}, 900_000);
