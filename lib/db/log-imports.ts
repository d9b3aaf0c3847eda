import type { LogImport } from '#lib/domain/log-import.ts';
import type { TeamPg } from './client.ts';

/** Ids of every rung in use. */
export async function listRungIds(tx: TeamPg): Promise<string[]> {
  const { rows } = await tx.client.query<{ id: string }>(
    'select id from rung where team_id = $1 and retired_at is null',
    [tx.teamId],
  );
  return rows.map(({ id }) => id);
}

/** Local dates of a client that have a check-in which counts. */
export async function listCheckInDates(tx: TeamPg, clientId: string): Promise<string[]> {
  const { rows } = await tx.client.query<{ date: string }>(
    `select distinct date from check_in
     where team_id = $1 and client_id = $2 and replaced_at is null and deleted_at is null`,
    [tx.teamId, clientId],
  );
  return rows.map(({ date }) => date);
}

/** Newest first. */
export async function listLogImports(tx: TeamPg, clientId: string): Promise<LogImport[]> {
  const { rows } = await tx.client.query<LogImport>(
    `select i.id, m.name as by, i.days, i.sets, i.from_date as "from", i.to_date as "to", i.created_at as "at",
       i.undone_at as "undoneAt"
     from log_import i join member m on m.team_id = i.team_id and m.id = i.by_id
     where i.team_id = $1 and i.client_id = $2 order by i.created_at desc, i.id`,
    [tx.teamId, clientId],
  );
  return rows;
}

export async function insertLogImport(
  tx: TeamPg,
  of: { clientId: string; byId: string; days: number; sets: number; from: string; to: string; at: Date },
): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into log_import (team_id, client_id, by_id, days, sets, from_date, to_date, created_at)
     values ($1, $2, $3, $4, $5, $6, $7, $8) returning id`,
    [tx.teamId, of.clientId, of.byId, of.days, of.sets, of.from, of.to, of.at],
  );
  return rows[0]?.id ?? '';
}

export async function markOfImport(tx: TeamPg, importId: string, checkInIds: string[]): Promise<void> {
  await tx.client.query(
    'update check_in set log_import_id = $2 where team_id = $1 and id = any($3::uuid[])',
    [tx.teamId, importId, checkInIds],
  );
}

/**
 * Takes the check-ins of an import away again and returns their dates. One that was corrected, spoken of or marked since
 * stays: it has become part of what happened.
 */
export async function deleteOfImport(
  tx: TeamPg,
  importId: string,
  at: Date,
): Promise<{ dates: string[]; stayed: number }> {
  const { rows } = await tx.client.query<{ date: string }>(
    `delete from check_in c where c.team_id = $1 and c.log_import_id = $2 and c.replaced_at is null and not exists (
       select from coach_word w left join check_in_set s on s.team_id = w.team_id and s.id = w.set_id
         where w.team_id = c.team_id and (w.check_in_id = c.id or s.check_in_id = c.id)
       union all select from seen_mark m where m.team_id = c.team_id and m.check_in_id = c.id
       union all select from clip k where k.team_id = c.team_id and k.check_in_id = c.id
       union all select from set_verdict v where v.team_id = c.team_id and v.check_in_id = c.id
       union all select from question q where q.team_id = c.team_id and q.check_in_id = c.id)
     returning c.date`,
    [tx.teamId, importId],
  );
  await tx.client.query('update log_import set undone_at = $3 where team_id = $1 and id = $2', [
    tx.teamId,
    importId,
    at,
  ]);
  const { rowCount } = await tx.client.query(
    'select from check_in where team_id = $1 and log_import_id = $2',
    [tx.teamId, importId],
  );
  return { dates: rows.map(({ date }) => date), stayed: rowCount ?? 0 };
}
