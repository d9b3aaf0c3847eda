import type pg from 'pg';

/** How many rows a table has, and a sum over the texts of all of them that says whether two tables hold the same. */
export type TableFigure = { rows: number; sum: string };

/** Values are written as text in one way, whatever the server's settings are. */
const ONE_WAY = `set datestyle = 'ISO, YMD'; set intervalstyle = 'postgres'; set timezone = 'UTC';
  set extra_float_digits = 1; set bytea_output = 'hex'`;

export async function listTables(client: pg.ClientBase): Promise<string[]> {
  const { rows } = await client.query<{ name: string }>(
    `select relname as name from pg_class
     where relnamespace = 'public'::regnamespace and relkind = 'r' order by relname`,
  );
  return rows.map((row) => row.name);
}

export async function countRows(client: pg.ClientBase): Promise<Record<string, number>> {
  const counts: Record<string, number> = {};
  for (const table of await listTables(client)) {
    const { rows } = await client.query<{ rows: string }>(
      `select count(*) as rows from public.${quoted(table)}`,
    );
    counts[table] = Number(rows[0]?.rows);
  }
  return counts;
}

/** Reads every row of every table: minutes for millions of rows. */
export async function tableFigures(client: pg.ClientBase): Promise<Record<string, TableFigure>> {
  await client.query(ONE_WAY);
  const figures: Record<string, TableFigure> = {};
  for (const table of await listTables(client)) {
    const { rows } = await client.query<{ rows: string; sum: string }>(
      `select count(*) as rows, coalesce(sum(hashtextextended(each::text, 0)::numeric), 0)::text as sum
       from public.${quoted(table)} each`,
    );
    figures[table] = { rows: Number(rows[0]?.rows), sum: rows[0]?.sum ?? '' };
  }
  return figures;
}

/** Rows put in and taken out so far: between two looks, how far a count may have moved and come back. */
export async function countChanges(client: pg.ClientBase): Promise<Record<string, number>> {
  const { rows } = await client.query<{ name: string; changes: string }>(
    `select relname as name, n_tup_ins + n_tup_del as changes from pg_stat_user_tables where schemaname = 'public'`,
  );
  return Object.fromEntries(rows.map(({ name, changes }) => [name, Number(changes)]));
}

function quoted(name: string): string {
  return `"${name.replaceAll('"', '""')}"`;
}
