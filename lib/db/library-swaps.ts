import type { Tissue } from '#lib/domain/vocabulary.ts';
import type { SwapState } from '#lib/planning/ladders/ladder-state.ts';
import type { TeamPg } from './client.ts';

export type SwapChoice = {
  id: string;
  name: string;
  ladder: string;
  weights: Partial<Record<Tissue, number>>;
};

/** Rungs in use of the skill that a ladder belongs to: its own first, then those of its part, then the others. */
export async function listSwapChoices(tx: TeamPg, ladderId: string): Promise<SwapChoice[]> {
  const { rows } = await tx.client.query<SwapChoice>(
    `select r.id, r.name, l.name as ladder, d.weights
     from ladder own join part op on op.team_id = own.team_id and op.id = own.part_id
     join part p on p.team_id = op.team_id and p.skill_id = op.skill_id
     join ladder l on l.team_id = p.team_id and l.part_id = p.id
     join rung r on r.team_id = l.team_id and r.ladder_id = l.id
     join drill d on d.team_id = r.team_id and d.id = r.drill_id
     where own.team_id = $1 and own.id = $2 and r.retired_at is null and l.retired_at is null
     order by l.id <> own.id, l.part_id <> own.part_id, l.position, r.position`,
    [tx.teamId, ladderId],
  );
  return rows;
}

/** Ladders of the team in the order in which equals are chosen as swaps. */
export async function listLadderOrder(tx: TeamPg): Promise<string[]> {
  const { rows } = await tx.client.query<{ id: string }>(
    'select id from ladder where team_id = $1 order by position, id',
    [tx.teamId],
  );
  return rows.map((row) => row.id);
}

export type KeptSwaps = { rungId: string; ladderId: string; swaps: SwapState[] };

/** The swaps of every rung of the team that has some, as they are kept. */
export async function listKeptSwaps(tx: TeamPg): Promise<KeptSwaps[]> {
  const { rows } = await tx.client.query<KeptSwaps>(
    `select w.rung_id as "rungId", r.ladder_id as "ladderId",
       json_agg(json_build_object('insteadId', w.instead_id, 'tissue', w.tissue,
         'support', nullif(w.support, ''), 'why', w.why) order by w.tissue, w.position, w.id) as swaps
     from swap w join rung r on r.team_id = w.team_id and r.id = w.rung_id
     where w.team_id = $1 group by w.rung_id, r.ladder_id`,
    [tx.teamId],
  );
  return rows;
}

/** Names of these rungs with their ladders: "Tuck, Planche holds". */
export async function listRungNames(tx: TeamPg, rungIds: readonly string[]): Promise<Map<string, string>> {
  const { rows } = await tx.client.query<{ id: string; name: string }>(
    `select r.id, r.name || ', ' || l.name as name
     from rung r join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
     where r.team_id = $1 and r.id::text = any($2)`,
    [tx.teamId, rungIds],
  );
  return new Map(rows.map((row) => [row.id, row.name]));
}

/** Writes the swaps of these rungs as they are now; those not named any more go. */
export async function saveSwaps(
  { client, teamId }: TeamPg,
  rungs: readonly { id: string; swaps: readonly SwapState[] }[],
): Promise<void> {
  const swaps = rungs.flatMap((rung) =>
    rung.swaps.map((swap, position) => ({
      ...swap,
      rungId: rung.id,
      support: swap.support ?? '',
      position,
    })),
  );
  const wanted = JSON.stringify(swaps);
  await client.query(
    `delete from swap where team_id = $1 and rung_id = any($2::uuid[]) and not exists (
       select from jsonb_to_recordset($3) as w("rungId" uuid, "insteadId" uuid, tissue text, support text)
       where w."rungId" = swap.rung_id and w."insteadId" = swap.instead_id and w.tissue = swap.tissue
         and w.support = swap.support)`,
    [teamId, rungs.map((rung) => rung.id), wanted],
  );
  await client.query(
    `insert into swap (team_id, rung_id, instead_id, tissue, support, position, why)
     select $1, w."rungId", w."insteadId", w.tissue, w.support, w.position, w.why
     from jsonb_to_recordset($2)
       as w("rungId" uuid, "insteadId" uuid, tissue text, support text, position int, why text)
     on conflict (team_id, rung_id, instead_id, tissue, support)
       do update set why = excluded.why, position = excluded.position`,
    [teamId, wanted],
  );
}
