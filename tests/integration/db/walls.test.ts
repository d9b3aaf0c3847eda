import { describe, expect, it } from 'vitest';
import { pool, withTeam, withTeamPg } from '#lib/db/client.ts';
import { makeTestClient, makeTestTeam, ownerQuery } from '../support/database.ts';

describe('the walls between teams', () => {
  it('every table of a team forces row-level security with both clauses', async () => {
    const rows = await ownerQuery<{
      table_name: string;
      forced: boolean;
      policy: string | null;
      check: string | null;
    }>(
      `select c.table_name, k.relrowsecurity and k.relforcerowsecurity as forced, p.qual as policy, p.with_check as check
       from information_schema.columns c
       join pg_class k on k.relname = c.table_name and k.relnamespace = 'public'::regnamespace and k.relkind = 'r'
       left join pg_policies p on p.tablename = c.table_name and p.policyname = 'own_team'
       where c.table_schema = 'public' and c.column_name = 'team_id'`,
    );
    expect(rows.length).toBeGreaterThan(40);
    expect(rows.filter((row) => !row.forced || !row.policy || !row.check)).toEqual([]);
  });

  it('every reference between tables of a team carries the team', async () => {
    const rows = await ownerQuery<{ conname: string }>(
      `select f.conname from pg_constraint f
       join pg_class child on child.oid = f.conrelid
       where f.contype = 'f' and f.connamespace = 'public'::regnamespace
         and exists (select from pg_attribute a where a.attrelid = f.conrelid and a.attname = 'team_id')
         and exists (select from pg_attribute a where a.attrelid = f.confrelid and a.attname = 'team_id')
         and not exists (select from pg_attribute a where a.attrelid = f.conrelid and a.attname = 'team_id' and a.attnum = any (f.conkey))`,
    );
    expect(rows).toEqual([]);
  });

  it('a query without a where sees one team only, and none without a team', async () => {
    const [one, two] = [await makeTestTeam('One'), await makeTestTeam('Two')];
    await makeTestClient(one, { name: 'Mine' });
    const theirs = await makeTestClient(two, { name: 'Theirs' });
    const seen = await withTeam(one.scope, (tx) => tx.db.client.findMany({ select: { name: true } }));
    expect(seen).toEqual([{ name: 'Mine' }]);
    expect((await pool().query('select * from client')).rows).toEqual([]);
    const moved = await withTeam(one.scope, (tx) =>
      tx.db.client.updateMany({ where: { id: theirs.clientId }, data: { name: 'Moved' } }),
    );
    expect(moved.count).toBe(0);
  });

  it('a row of another team cannot be written, nor pointed at', async () => {
    const [one, two] = [await makeTestTeam('One'), await makeTestTeam('Two')];
    const theirs = await makeTestClient(two);
    const insert = (teamId: string) =>
      withTeamPg(one.scope, (tx) =>
        tx.client.query(
          `insert into absence (team_id, client_id, kind, from_date) values ($1, $2, 'holiday', '2026-01-01')`,
          [teamId, theirs.clientId],
        ),
      );
    await expect(insert(two.teamId)).rejects.toThrow(/row-level security/);
    await expect(insert(one.teamId)).rejects.toThrow(/foreign key/);
  });

  it('the trace of what was done cannot be rewritten by the application', async () => {
    const team = await makeTestTeam();
    const change = (sql: string) => withTeamPg(team.scope, (tx) => tx.client.query(sql));
    await change(
      `insert into audit (team_id, actor_role, action, fields) values ('${team.teamId}', 'lead', 'test', '{}')`,
    );
    await expect(change('update audit set action = $$other$$')).rejects.toThrow(/permission denied/);
    await expect(change('delete from audit')).rejects.toThrow(/permission denied/);
    await expect(change('delete from reason_event')).rejects.toThrow(/permission denied/);
  });
});
