import type { TeamPg } from '#lib/db/client.ts';

/** Inserts many rows of one table in one statement; `columns` gives each column's type, rows carry the same names. */
export async function insertRows<Column extends string>(
  tx: TeamPg,
  table: string,
  columns: Record<Column, string>,
  rows: Record<Column, unknown>[],
): Promise<void> {
  if (rows.length === 0) return;
  const names = Object.keys(columns) as Column[];
  const typed = names.map((name) => `${name} ${columns[name]}`).join(', ');
  await tx.client.query(
    `insert into ${table} (team_id, ${names.join(', ')})
     select $1, ${names.map((name) => `r.${name}`).join(', ')} from jsonb_to_recordset($2::jsonb) as r(${typed})`,
    [tx.teamId, JSON.stringify(rows)],
  );
}
