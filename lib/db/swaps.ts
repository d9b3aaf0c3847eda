import type { Support, Tissue } from '#lib/domain/vocabulary.ts';
import { type Swap, type SwapRung, swapsOf } from '#lib/planning/swaps.ts';
import type { TeamPg } from './client.ts';

/** Works out the swaps of every rung of the team, where it has none yet: they are the team's to change from then on. */
export async function fillSwaps(tx: TeamPg): Promise<void> {
  const there = await tx.client.query('select 1 from swap where team_id = $1 limit 1', [tx.teamId]);
  if (there.rowCount !== 0) return;
  await insertSwaps(tx, swapsOf(await listSwapRungs(tx)));
}

async function insertSwaps(tx: TeamPg, swaps: readonly Swap[]): Promise<void> {
  await tx.client.query(
    `insert into swap (team_id, rung_id, instead_id, tissue, support, position, why)
     select $1, r."rungId", r."insteadId", r.tissue, coalesce(r.support, ''), r.position, r.why
     from jsonb_to_recordset($2)
       as r("rungId" uuid, "insteadId" uuid, tissue text, support text, position int, why text)
     on conflict do nothing`,
    [tx.teamId, JSON.stringify(swaps)],
  );
}

/** What swaps are chosen from: the rungs in use of the whole team, in the order of the library. */
export async function listSwapRungs(tx: TeamPg): Promise<SwapRung[]> {
  const { rows } = await tx.client.query<SwapRung>(
    `select r.id, r.ladder_id as "ladderId", p.name as part, s.name as skill, r.position, r.name,
       coalesce(d.family, l.family) as family, d.measure, d.weights, d.equipment,
       d.upside_down as "upsideDown"
     from rung r
     join drill d on d.team_id = r.team_id and d.id = r.drill_id
     join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
     join part p on p.team_id = l.team_id and p.id = l.part_id
     join skill s on s.team_id = p.team_id and s.id = p.skill_id
     where r.team_id = $1 and r.retired_at is null and l.retired_at is null
     order by s.position, p.position, l.position, r.position`,
    [tx.teamId],
  );
  return rows;
}

/** Swaps of these rungs, the first choice first; rungs that were retired since are no choice. */
export async function listSwaps(tx: TeamPg, rungIds: readonly string[]): Promise<Swap[]> {
  const { rows } = await tx.client.query<Omit<Swap, 'support'> & { support: Support | ''; tissue: Tissue }>(
    `select w.rung_id as "rungId", w.instead_id as "insteadId", w.tissue, w.support, w.position, w.why
     from swap w join rung r on r.team_id = w.team_id and r.id = w.instead_id
     where w.team_id = $1 and w.rung_id = any($2::uuid[]) and r.retired_at is null
     order by w.rung_id, w.tissue, w.position, w.id`,
    [tx.teamId, rungIds],
  );
  return rows.map((row) => ({ ...row, support: row.support === '' ? null : row.support }));
}
