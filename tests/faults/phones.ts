import assert from 'node:assert/strict';
import type { CheckInInput } from '#lib/schemas/check-in.ts';
import { AT } from './night.ts';
import { pause } from './pause.ts';
import type { Stage, Web } from './stage.ts';

/** A client's phone: it sends until it is told that the check-in is kept, and remembers what it was told. */
export type Phone = { cookie: string; body: CheckInInput; answers: Answer[] };
export type Answer = { status: number | null; text: string };
const KEPT = 201;
const PATIENCE_MS = 20_000;
/** How long a phone goes on trying in these runs. */
const ONLINE_MS = 60_000;
const TODAY = AT.slice(0, 10);

/** One check-in for each of so many clients: every third with high pain, every fifth with a question. */
export async function phonesOf(stage: Stage, web: Web, many: number): Promise<Phone[]> {
  const clients = await stage.sql<{ user: string; id: string }>(
    `select user_id as "user", overlay(overlay(md5(id::text) placing '4' from 13) placing '8' from 17)::uuid::text as id
     from client where zone = 'UTC' order by id limit $1`,
    [many],
  );
  const [rung] = await stage.sql<{ id: string }>('select id from rung');
  const phones: Phone[] = [];
  for (const [at, { user, id }] of clients.entries()) {
    const cookie = await (await fetch(`${web.url}/cookie?of=${user}`)).text();
    phones.push({ cookie, body: checkIn(id, rung?.id ?? '', at), answers: [] });
  }
  return phones;
}

function checkIn(id: string, rungId: string, at: number): CheckInInput {
  const set = { rungId, planned: 20, how: 'typed' } as const;
  const isHigh = at % 3 === 0;
  return {
    id,
    date: TODAY,
    zone: 'UTC',
    sentAt: AT,
    kind: 'training',
    session: 'A',
    effort: 4 + (at % 5),
    minutes: 40 + at,
    sets: [
      { ...set, side: 'left', index: 1, value: 10 + (at % 9) },
      { ...set, side: 'right', index: 1, value: 12 + (at % 7) },
    ],
    ...(isHigh
      ? {
          pain: [
            { region: 'wrist-back', side: 'right', moment: 'after', value: 7, kind: 'joint', usual: false },
          ],
        }
      : { nothingHurts: true }),
    ...(at % 5 === 0 && { question: `How long should check-in ${at} be held?` }),
  };
}

/** One try, as the form makes it. No answer in time, or none at all, has no status. */
export async function send(phone: Phone, url: string): Promise<Answer> {
  const answer: Answer = await fetch(`${url}/api/check-ins`, {
    method: 'POST',
    headers: { cookie: phone.cookie, 'content-type': 'application/json' },
    body: JSON.stringify(phone.body),
    signal: AbortSignal.timeout(PATIENCE_MS),
  }).then(
    async (response) => ({ status: response.status, text: await response.text() }),
    () => ({ status: null, text: '' }),
  );
  phone.answers.push(answer);
  return answer;
}

/** Tries again until it is kept, as the phone does when it is online again. */
export async function sendUntilKept(phone: Phone, url: () => string): Promise<void> {
  const until = Date.now() + ONLINE_MS;
  while (Date.now() < until) {
    if ((await send(phone, url())).status === KEPT) return;
    await pause(250);
  }
  throw new Error(`not kept after ${phone.answers.length} tries: ${JSON.stringify(phone.answers.at(-1))}`);
}

/** Whoever was told that the check-in is kept finds it there, once, whatever happened since. */
export async function assertKept(stage: Stage, phones: readonly Phone[]): Promise<void> {
  const told = phones.filter((phone) => phone.answers.some(({ status }) => status === KEPT));
  const there = await stage.sql<{ id: string }>('select id from check_in where id = any($1)', [
    told.map((phone) => phone.body.id),
  ]);
  assert.equal(there.length, told.length, 'a check-in that was said to be kept is not there');
}

/** Waits until the outbox is empty and the checks after the check-ins have run. */
export async function checksDone(stage: Stage): Promise<void> {
  for (let tries = 0; tries < 400; tries += 1) {
    const [waiting] = await stage
      .sql<{ n: number }>(
        `select count(*)::int as n from outbox where kind = 'after-check-in' and sent_at is null`,
      )
      .catch(() => [{ n: 1 }]);
    if (waiting?.n === 0 && (await stage.isIdle())) return;
    if (tries % 40 === 39) {
      await stage.passTime();
      await stage.tick();
    }
    await pause(100);
  }
  throw new Error('check-ins wait in the outbox');
}
