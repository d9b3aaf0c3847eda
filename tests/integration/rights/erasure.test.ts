import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import type { ErasureLine } from '#lib/db/erasures.ts';
import { ERASE_LIST_NAME, readEraseListFile } from '#lib/files/erase-list-file.ts';
import * as files from '#lib/files/file-store.ts';
import { forgetAgain } from '#lib/launch/backup/forget-again.ts';
import { checkAfterCheckIn } from '#lib/usecases/check-after-check-in.ts';
import { applyErasures } from '#lib/usecases/rights/apply-erasures.ts';
import { askErasure, askErasureOf, takeErasureBack } from '#lib/usecases/rights/ask-erasure.ts';
import { eraseClient, eraseDueClients, removeFilesLeft } from '#lib/usecases/rights/erase-client.ts';
import { loadReceipt, writeReceipt } from '#lib/usecases/rights/load-receipt.ts';
import { runNightBatch } from '#lib/usecases/run-night-batch.ts';
import { anotherPhone, aPhone, NOW, type Phone } from '../check-in/arrange.ts';
import { ownerQuery } from '../support/database.ts';
import { leadOf } from '../team/arrange.ts';
import { fillClient, SEEDED, tablesWith } from './fill-client.ts';

const NAME = 'Quirina Vantongeren';
const inDays = (days: number) => new Date(NOW.getTime() + days * 86_400_000);
const folder = () => join(process.env.PLUMBLINE_FILES ?? '', phone.team.teamId);
const stills = async () => (await readdir(folder()).catch(() => [])).length;
let wall: Phone;
let phone: Phone;

beforeAll(async () => {
  wall = await aPhone('Wall');
});
beforeEach(async () => {
  phone = { ...wall, ...(await anotherPhone(wall.team, NAME)) };
  await fillClient(phone);
});

afterEach(async () => {
  const { clientId } = phone;
  const { teamId } = phone.team;
  const at = NOW.toISOString();
  await eraseClient({ teamId, clientId, receipt: clientId, origin: 'lead', askedAt: at, erasedAt: at });
  await removeFilesLeft();
  await ownerQuery('delete from outbox');
});

describe('deletion of a client', () => {
  it('waits seven days, then leaves no row, no file, no sign-in and no name; a receipt says what went', async () => {
    const other = await anotherPhone(phone.team, 'Somebody Else');
    const kept = await fillOther(other.clientId);
    const { receipt } = await askErasure(phone.actor, NOW);
    expect(await askErasure(phone.actor, inDays(1))).toMatchObject({ receipt }); // asked again: the same
    expect(await eraseDueClients(inDays(6.9))).toBe(0);
    expect(await stills()).toBe(1);

    expect(await eraseDueClients(inDays(7))).toBe(1);
    expect(await eraseDueClients(inDays(7))).toBe(0);

    expect(await tablesWith(SEEDED)).toEqual({});
    expect(await tablesWith(NAME)).toEqual({});
    expect(await tablesWith('203.0.113.7')).toEqual({});
    const byId = await tablesWith(phone.clientId);
    expect(Object.keys(byId).sort()).toEqual(['public.audit', 'public.erasure']);
    expect(await tablesWith(phone.actor.userId)).toEqual({ 'public.audit': expect.any(Number) });
    expect(await stills()).toBe(0);
    const [mail] = await ownerQuery<{ text: string }>(
      `select body->>'text' as text from outbox where dedupe_key = 'morning'`,
    );
    expect(mail?.text).toBe('Now:\na deleted client: pain\nSomebody Else: pain');
    expect(await countOf(other.clientId)).toEqual(kept); // nobody else lost anything

    const said = await loadReceipt(receipt);
    expect(said).toMatchObject({
      files: 1,
      filesLeft: 0,
      rows: { check_in: 2, answer: 1, plan_item: 2, client: 1 },
    });
    const text = (await writeReceipt(receipt)) ?? '';
    expect(text).toContain('It was done on Tuesday 1 December 2026.');
    expect(text).toContain('2 check-ins');
    expect(text).not.toContain(NAME);
    const line = (await readEraseListFile()).find((one) => one.receipt === receipt);
    expect(line).toMatchObject({ clientId: phone.clientId, origin: 'client' });
    expect(await readFile(join(process.env.PLUMBLINE_FILES ?? '', ERASE_LIST_NAME), 'utf8')).not.toContain(
      NAME,
    );
  });

  it('taken back in time deletes nothing, and says so under its number', async () => {
    const { receipt } = await askErasure(phone.actor, NOW);
    await takeErasureBack(phone.actor, phone.clientId, inDays(6));
    expect(await eraseDueClients(inDays(30))).toBe(0);
    expect((await writeReceipt(receipt)) ?? '').toContain('It was taken back on Monday 30 November 2026.');
    expect((await askErasure(phone.actor, inDays(8))).receipt).not.toBe(receipt);
  });

  it('asked by the lead keeps the words until then, and not after', async () => {
    const lead = leadOf(phone.team);
    await askErasureOf(lead, { clientId: phone.clientId, words: `Asked by ${NAME} in a letter.` }, NOW);
    await eraseDueClients(inDays(7));
    expect(await tablesWith('in a letter')).toEqual({});
    const lines = await ownerQuery<{ action: string }>(
      `select action from audit where client_id = $1 and action like '%delet%' order by at`,
      [phone.clientId],
    );
    expect(lines.map(({ action }) => action)).toEqual(['deletion-asked', 'client-deleted']);
  });

  it('keeps the sign-in of somebody who is also a member, and takes a guardian’s', async () => {
    const [guardian] = await ownerQuery<{ id: string }>(
      'select user_id as id from guardian where client_id = $1',
      [phone.clientId],
    );
    await ownerQuery('update client set user_id = $2 where id = $1', [phone.clientId, phone.team.userId]);
    await askErasure(phone.actor, NOW);
    await eraseDueClients(inDays(7));
    expect(await ownerQuery('select from "user" where id = $1', [phone.team.userId])).toHaveLength(1);
    expect(await ownerQuery('select from "user" where id = $1', [guardian?.id])).toEqual([]);
  });

  it('leaves jobs of the client harmless', async () => {
    const { clientId, team } = phone;
    await askErasure(phone.actor, NOW);
    await eraseDueClients(inDays(7));
    expect(await checkAfterCheckIn({ teamId: team.teamId, clientId }, inDays(7))).toBe(0);
    const batch = { localDate: '2026-11-24', clientIds: [clientId] };
    expect(await runNightBatch(team.scope, batch, inDays(7))).toEqual({ done: 0, failed: 0 });
    expect(Object.keys(await tablesWith(clientId)).sort()).toEqual(['public.audit', 'public.erasure']);
  });

  it('a file that cannot be removed is named until it is gone; the rows are gone at once', async () => {
    const { receipt } = await askErasure(phone.actor, NOW);
    const store = files.fileStore();
    const broken = vi.spyOn(files, 'fileStore').mockReturnValue({
      ...store,
      removeAll: () => Promise.reject(new Error('the disk is away')),
    });
    await eraseDueClients(inDays(7));
    expect(await loadReceipt(receipt)).toMatchObject({ files: 1, filesLeft: 1 });
    expect((await writeReceipt(receipt)) ?? '').toContain('1 still to be removed');
    broken.mockRestore();
    await eraseDueClients(inDays(7.1));
    expect(await loadReceipt(receipt)).toMatchObject({ filesLeft: 0 });
    expect(await stills()).toBe(0);
  });

  it('breaks as a whole or not at all', async () => {
    await ownerQuery(
      `create or replace function refuse() returns trigger language plpgsql as $$ begin raise exception 'no'; end $$`,
    );
    await ownerQuery('create trigger refuse before insert on erasure for each row execute function refuse()');
    const before = await countOf(phone.clientId);
    await askErasure(phone.actor, NOW);
    expect(await eraseDueClients(inDays(7))).toBe(0);
    expect(await countOf(phone.clientId)).toEqual(before);
    expect(await stills()).toBe(1);
    await ownerQuery('drop trigger refuse on erasure');
    expect(await eraseDueClients(inDays(7))).toBe(1);
  });

  it('is done again after a backup brought the client back, from the list beside the database', async () => {
    const { teamId } = phone.team;
    await askErasure(phone.actor, NOW);
    await eraseDueClients(inDays(7));
    await ownerQuery('delete from erasure where client_id = $1', [phone.clientId]); // the backup is older than the list
    await ownerQuery(
      `insert into client (team_id, id, coach_id, name, zone, standing) values ($1, $2, $3, $4, 'Europe/Berlin', 'left')`,
      [teamId, phone.clientId, phone.team.memberId, NAME],
    );
    expect((await applyErasures()).erased).toBe(1);
    expect(Object.keys(await tablesWith(phone.clientId)).sort()).toEqual(['public.audit', 'public.erasure']);
    expect((await applyErasures()).erased).toBe(0);
    const [line] = (await readEraseListFile()).filter((one) => one.clientId === phone.clientId);
    expect(await eraseClient(line as ErasureLine)).toBe(false);
  });

  it('is done again by a restore, from a newer list than the backup’s', async () => {
    const files = mkdtempSync(join(tmpdir(), 'plumbline-restored-'));
    const newer = join(files, 'newer.jsonl');
    const { clientId } = phone;
    const { teamId } = phone.team;
    const at = NOW.toISOString();
    const line = {
      teamId,
      clientId,
      receipt: 'FROM-THE-NEWER-LIST',
      origin: 'client',
      askedAt: at,
      erasedAt: at,
    };
    writeFileSync(newer, `${JSON.stringify(line)}\n{"teamId":"cut`);
    const owner = new pg.Client({ connectionString: process.env.DATABASE_URL });
    await owner.connect();
    try {
      expect(await forgetAgain(owner, files, newer)).toBe(1);
      expect(await forgetAgain(owner, files, undefined)).toBe(0);
    } finally {
      await owner.end();
    }
    expect(await ownerQuery('select from client where id = $1', [clientId])).toEqual([]);
    expect(await loadReceipt('FROM-THE-NEWER-LIST')).toMatchObject({ filesLeft: 1 }); // the worker's next tick
    expect(await readEraseListFile(files)).toEqual([line]); // kept for the next backup
    rmSync(files, { recursive: true });
  });
});

/** A few rows of another client, and how many there are. */
async function fillOther(clientId: string): Promise<Record<string, number>> {
  const { team } = phone;
  await ownerQuery(
    `insert into private_note (team_id, client_id, by_id, text) values ($1, $2, $3, 'stays')`,
    [team.teamId, clientId, team.memberId],
  );
  return countOf(clientId);
}

async function countOf(clientId: string): Promise<Record<string, number>> {
  const found = await tablesWith(clientId);
  const { 'public.audit': _, 'public.erasure_ask': __, ...rest } = found;
  return rest;
}
