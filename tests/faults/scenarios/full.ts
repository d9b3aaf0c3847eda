import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { BOTH, type Fault } from '../fault.ts';
import { assertSame, meaningOf } from '../meaning.ts';
import { pause } from '../pause.ts';
import { assertKept, checksDone, phonesOf, send, sendUntilKept } from '../phones.ts';
import type { Stage } from '../stage.ts';
import { phonesFor, playSubmits, statuses, undisturbedSubmits } from './submits.ts';

/** Fills the disk under one table that each submit writes to; gives back how, and what makes room again. */
async function fillDisk(stage: Stage): Promise<{ how: string; free: () => Promise<void> }> {
  const folder = join(stage.world.folder, `disk-of-${stage.database.name}`);
  mkdirSync(folder);
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=1m', 'tmpfs', folder], { stdio: 'ignore' });
  } catch {
    return injected(stage);
  }
  execFileSync('chown', [`--reference=${stage.world.data}`, folder]);
  const name = `disk_of_${stage.database.name}`;
  await stage.world.sql(stage.world.admin, `create tablespace ${name} location '${folder}'`);
  stage.afterwards(async () => {
    await stage.world.sql(stage.world.admin, `drop tablespace ${name}`);
    execFileSync('umount', [folder]);
  });
  await stage.sql(`alter table outbox set tablespace ${name}`);
  const filler = join(folder, 'filler');
  const { bavail, bsize } = statfsSync(folder);
  writeFileSync(filler, Buffer.alloc(bavail * bsize));
  return { how: 'a full tmpfs under the table outbox', free: async () => rmSync(filler) };
}

/** Without the right to mount: the database itself says what it says when the disk is full. */
async function injected(stage: Stage): Promise<{ how: string; free: () => Promise<void> }> {
  await stage.sql(`create function planted() returns trigger language plpgsql as $$
    begin raise exception 'could not extend file: No space left on device' using errcode = '53100'; end $$`);
  await stage.sql('create trigger planted before insert on outbox for each row execute function planted()');
  return {
    how: 'error 53100 planted in the database',
    free: async () => void (await stage.sql('drop trigger planted on outbox')),
  };
}

export const diskFull: Fault = {
  name: 'disk-full',
  what: 'no room left on the database’s disk while check-ins are sent',
  kinds: BOTH,
  run: async (table) => {
    const expected = await undisturbedSubmits(table);
    const stage = await table.open();
    await stage.settle();
    await stage.worker();
    const web = await stage.web();
    const phones = await phonesOf(stage, web, phonesFor(stage));
    const before = await meaningOf(stage);
    const { how, free } = await fillDisk(stage);
    for (const phone of phones) {
      const { status, text } = await send(phone, web.url);
      assert.equal(status, 503, `answered ${status}: ${text.slice(0, 200)}`);
      assert.match(text, /no room left on the server/);
    }
    assertSame(await meaningOf(stage), before);
    await free();
    for (const phone of phones) await sendUntilKept(phone, () => web.url);
    await checksDone(stage);
    await assertKept(stage, phones);
    assertSame(await meaningOf(stage), expected);
    return `${how}; ${statuses(phones)}`;
  },
};

/** A web process has ten connections for its own work. */
const MORE_THAN_THE_POOL = 13;

export const poolExhausted: Fault = {
  name: 'pool-exhausted',
  what: 'every connection of the web process held up while check-ins are sent',
  kinds: BOTH,
  run: async (table) => {
    const expected = await table.undisturbed('submits of many', (stage) =>
      playSubmits(stage, MORE_THAN_THE_POOL),
    );
    const stage = await table.open();
    await stage.settle();
    await stage.worker();
    const web = await stage.web();
    const phones = await phonesOf(stage, web, MORE_THAN_THE_POOL);
    const holder = new pg.Client({ connectionString: stage.database.ownerUrl });
    await holder.connect();
    await holder.query('begin');
    await holder.query('select from client for update');
    const sent = Promise.all(phones.map((phone) => send(phone, web.url)));
    await pause(7_000); // longer than a request waits for a connection
    await holder.query('rollback');
    await holder.end();
    const refused = (await sent).filter(({ status }) => status !== 201);
    assert.ok(refused.length > 0, 'the connections were not used up');
    for (const { status, text } of refused) {
      assert.equal(status, 503, `answered ${status}: ${text.slice(0, 200)}`);
      assert.match(text, /busy with too many requests/);
    }
    for (const phone of phones) await sendUntilKept(phone, () => web.url);
    await checksDone(stage);
    await assertKept(stage, phones);
    assertSame(await meaningOf(stage), expected);
    return statuses(phones);
  },
};
