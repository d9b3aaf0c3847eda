import assert from 'node:assert/strict';
import { BOTH, type Fault, type Table } from '../fault.ts';
import { assertSame, meaningOf } from '../meaning.ts';
import { pause } from '../pause.ts';
import { assertKept, checksDone, type Phone, phonesOf, send, sendUntilKept } from '../phones.ts';
import type { Stage } from '../stage.ts';

/** How many phones send: not more than are needed to be under way together. */
export const phonesFor = (stage: Stage) => Math.min(12, Math.max(4, Math.floor(stage.sizes.clients / 6)));

/** Everybody sends one check-in with nothing wrong, and the checks after them run. */
export async function playSubmits(stage: Stage, many = phonesFor(stage)): Promise<void> {
  await stage.settle();
  const worker = await stage.worker();
  const web = await stage.web();
  for (const phone of await phonesOf(stage, web, many)) await sendUntilKept(phone, () => web.url);
  await checksDone(stage);
  await worker.stop();
}
export const undisturbedSubmits = (table: Table) =>
  table.undisturbed('submits', (stage) => playSubmits(stage));

export const statuses = (phones: readonly Phone[]) => {
  const counted = new Map<string, number>();
  for (const { status } of phones.flatMap((phone) => phone.answers))
    counted.set(
      status === null ? 'no answer' : String(status),
      (counted.get(status === null ? 'no answer' : String(status)) ?? 0) + 1,
    );
  return [...counted].map(([status, times]) => `${times} x ${status}`).join(', ');
};

export const queueDown: Fault = {
  name: 'queue-down',
  what: 'the queue is away while check-ins are sent',
  kinds: BOTH,
  run: async (table) => {
    const expected = await undisturbedSubmits(table);
    const stage = await table.open();
    await stage.settle();
    await stage.worker();
    const web = await stage.web();
    const phones = await phonesOf(stage, web, phonesFor(stage));
    await stage.queueAway();
    const began = Date.now();
    for (const phone of phones) {
      const answer = await send(phone, web.url);
      assert.equal(answer.status, 201, `a check-in needs no queue: ${answer.text}`);
    }
    const each = (Date.now() - began) / phones.length;
    await stage.queueBack();
    await checksDone(stage);
    await assertKept(stage, phones);
    assertSame(await meaningOf(stage), expected);
    return `${phones.length} of ${phones.length} kept while it was away, ${each.toFixed(0)} ms each`;
  },
};

export const postgresRestartedAtSubmit: Fault = {
  name: 'restarted-at-submit',
  what: 'PostgreSQL ended at once while check-ins are sent',
  kinds: BOTH,
  run: async (table) => {
    const expected = await undisturbedSubmits(table);
    const stage = await table.open();
    await stage.settle();
    await stage.worker();
    const web = await stage.web();
    const phones = await phonesOf(stage, web, phonesFor(stage));
    const sending = Promise.all(
      phones.map(async (phone, at) => {
        await pause(at * 15);
        await sendUntilKept(phone, () => web.url);
      }),
    );
    sending.catch(() => undefined); // heard below
    await pause(stage.draw.uniform(60, 160));
    await stage.world.restartPostgres(500);
    await sending;
    const refused = phones.flatMap((phone) => phone.answers).filter(({ status }) => status !== 201);
    for (const { status, text } of refused)
      assert.ok(
        status === 503 && /not reached|busy|kept/i.test(text),
        `answered ${status}: ${text.slice(0, 200)}`,
      );
    await checksDone(stage);
    await assertKept(stage, phones);
    assertSame(await meaningOf(stage), expected);
    return statuses(phones);
  },
};

export const webKilled: Fault = {
  name: 'web-killed',
  what: 'the web process killed with -9 while check-ins are sent, again and again',
  kinds: BOTH,
  run: async (table) => {
    const expected = await undisturbedSubmits(table);
    const stage = await table.open();
    await stage.settle();
    await stage.worker();
    let web = await stage.web();
    const phones = await phonesOf(stage, web, phonesFor(stage));
    const sending = Promise.all(
      phones.map(async (phone, at) => {
        await pause(at * 25);
        await sendUntilKept(phone, () => web.url);
      }),
    );
    sending.catch(() => undefined); // heard below
    for (let times = 0; times < 3; times += 1) {
      await pause(stage.draw.uniform(50, 250));
      await web.kill();
      web = await stage.web();
    }
    await sending;
    await checksDone(stage);
    await assertKept(stage, phones);
    assertSame(await meaningOf(stage), expected);
    return statuses(phones);
  },
};

export const twenty: Fault = {
  name: 'twenty-at-once',
  what: 'each check-in sent 20 times at once, by two tabs over two web processes',
  kinds: BOTH,
  run: async (table) => {
    const expected = await undisturbedSubmits(table);
    const stage = await table.open();
    await stage.settle();
    await stage.worker();
    const webs = await Promise.all([stage.web(), stage.web()]);
    const phones = await phonesOf(stage, webs[0], phonesFor(stage));
    for (const phone of phones) {
      await Promise.all(
        Array.from({ length: 20 }, (_, at) => send(phone, (at % 2 === 0 ? webs[0] : webs[1]).url)),
      );
      const answers = new Set(phone.answers.map(({ status, text }) => `${status} ${text}`));
      assert.equal(answers.size, 1, `different answers: ${[...answers].slice(0, 2).join(' | ')}`);
    }
    await checksDone(stage);
    await assertKept(stage, phones);
    assertSame(await meaningOf(stage), expected);
    return statuses(phones);
  },
};
