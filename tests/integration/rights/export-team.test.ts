import { buffer } from 'node:stream/consumers';
import { parse } from 'csv-parse/sync';
import { beforeAll, describe, expect, it } from 'vitest';
import { exportTeam } from '#lib/usecases/rights/export-team.ts';
import { takeOwnRecord } from '#lib/usecases/rights/take-own-record.ts';
import { unzip } from '#tests/browser/support/unzip.ts';
import { anotherPhone, aPhone, NOW, type Phone } from '../check-in/arrange.ts';
import { ownerQuery } from '../support/database.ts';
import { leadOf } from '../team/arrange.ts';
import { fillClient } from './fill-client.ts';
import { namesInZip } from './names-in-zip.ts';

let phone: Phone;
beforeAll(async () => {
  phone = await aPhone('Anahit');
  await fillClient(phone);
  await anotherPhone(phone.team, '=cmd|calc');
  await ownerQuery(
    `insert into member_invitation (team_id, by_id, role, email, token_hash, expires_at)
     values ($1, $2, 'coach', 'new@team.example', 'hash-of-a-secret', now())`,
    [phone.team.teamId, phone.team.memberId],
  );
});

describe('everything out', () => {
  it('has a folder for each client with the whole record, and the tables of the team without secrets', async () => {
    const { zip, fileName } = await exportTeam(leadOf(phone.team), NOW);
    expect(fileName).toBe('everything-2026-11-24.zip');
    const bytes = await buffer(zip);
    const names = await namesInZip(bytes);
    const files = await unzip(bytes);
    const table = (name: string): Record<string, string>[] =>
      parse(files.get(name) ?? '', { columns: true, bom: true });
    const clients = table('clients.csv');
    expect(clients.map(({ name }) => name).sort()).toEqual(["'=cmd|calc", 'Anahit']);
    for (const { folder } of clients)
      expect(names.filter((name) => name.startsWith(`${folder}/`))).toHaveLength(1);
    expect(table('rungs.csv')).toHaveLength(phone.rungs.size);
    expect(table('members.csv')).toHaveLength(1);
    expect(table('invitations.csv')[0]?.email).toBe('new@team.example');
    const all = [...files.entries()].filter(([name]) => name.endsWith('.csv')).map(([, text]) => text);
    for (const secret of ['hash-of-a-secret', '203.0.113.7', phone.team.userId])
      expect(
        all.some((text) => text.includes(secret)),
        secret,
      ).toBe(secret === phone.team.userId);
    expect(Object.keys(table('members.csv')[0] ?? {})).not.toContain('user_id');
    const acts = await ownerQuery<{ action: string }>(
      `select action from audit where team_id = $1 and action in ('team-exported', 'client-exported') order by action`,
      [phone.team.teamId],
    );
    expect(acts.map(({ action }) => action)).toEqual(['client-exported', 'client-exported', 'team-exported']);
  });

  it('a client takes the own record, whole, on the phone, and it stands in the record of acts', async () => {
    const { zip } = await takeOwnRecord(phone.actor, NOW);
    const files = await unzip(await buffer(zip));
    expect(parse(files.get('check_ins.csv') ?? '', { columns: true, bom: true })).toHaveLength(2);
    const [line] = await ownerQuery<{ role: string }>(
      `select actor_role as role from audit where client_id = $1 and actor_user_id = $2 and action = 'client-exported'`,
      [phone.clientId, phone.actor.userId],
    );
    expect(line?.role).toBe('client');
  });
});
