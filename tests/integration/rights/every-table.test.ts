import { expect, it } from 'vitest';
import { TEAM_TABLES } from '#lib/db/team-tables.ts';
import { ownerQuery } from '../support/database.ts';

// A table is on the way of deletion when it names the client, or goes with a row that does; else it is the team's own
// and leaves with everything of the team. A new table that is neither fails here.
it('every table of a team goes with its client or leaves with the team', async () => {
  const rows = await ownerQuery<{ name: string }>(
    `with recursive of_team as (
       select c.table_name::text as name from information_schema.columns c
       join information_schema.tables t using (table_schema, table_name)
       where c.table_schema = 'public' and c.column_name = 'team_id' and t.table_type = 'BASE TABLE'
     ), gone as (
       select c.table_name::text as name from information_schema.columns c
       where c.table_schema = 'public' and c.column_name = 'client_id'
       union
       select child.relname::text from gone
       join pg_class parent on parent.relname = gone.name
       join pg_constraint f on f.confrelid = parent.oid and f.contype = 'f' and f.confdeltype = 'c'
       join pg_class child on child.oid = f.conrelid
     )
     select name from of_team where name not in (select name from gone) and name <> 'client' order by name`,
  );
  const own = TEAM_TABLES.map(({ table }) => table);
  expect(rows.length).toBeGreaterThan(10);
  expect(rows.map(({ name }) => name).filter((name) => !own.includes(name))).toEqual([]);
});
