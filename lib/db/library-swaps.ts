import type { Tissue } from '#lib/domain/vocabulary.ts';
import { swapsOf } from '#lib/planning/swaps.ts';
import type { TeamPg } from './client.ts';
import { insertSwaps, listSwapRungs } from './swaps.ts';

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

/** Works out the swaps of rungs that are new. */
export async function fillSwapsOf(tx: TeamPg, rungIds: readonly string[]): Promise<void> {
  if (rungIds.length === 0) return;
  const all = swapsOf(await listSwapRungs(tx));
  await insertSwaps(
    tx,
    all.filter((swap) => rungIds.includes(swap.rungId)),
  );
}
