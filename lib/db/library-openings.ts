import type { OpeningState } from '#lib/planning/ladders/ladder-state.ts';
import { openingsSchema } from '#lib/schemas/openings.ts';
import type { TeamPg } from './client.ts';

/*
 * Openings are kept with rungs by the keys they came under in the library ("H3.4"), rungs of the team's own by their ids.
 * An editor works with ids alone.
 */

/** Openings as they are kept, with the ids of their rungs; a rung that the team does not have stays as it is written. */
export async function readOpenings(tx: TeamPg, kept: unknown): Promise<OpeningState[]> {
  const openings = openingsSchema.catch([]).parse(kept);
  const { rows } = await tx.client.query<{ id: string; key: string }>(
    'select id, key from rung where team_id = $1 and key = any($2)',
    [tx.teamId, openings.flatMap(({ opens, needsAll }) => [opens, ...needsAll.flat()])],
  );
  return renamed(openings, new Map(rows.map((row) => [row.key, row.id])));
}

/** The openings of a ladder as they are kept. */
export async function saveOpenings(
  tx: TeamPg,
  ladderId: string,
  openings: readonly OpeningState[],
): Promise<void> {
  const { rows } = await tx.client.query<{ id: string; key: string }>(
    'select id::text as id, key from rung where team_id = $1 and key is not null and id::text = any($2)',
    [tx.teamId, openings.flatMap(({ opens, needsAll }) => [opens, ...needsAll.flat()])],
  );
  const kept = renamed(openings, new Map(rows.map((row) => [row.id, row.key])));
  await tx.client.query('update ladder set openings = $3 where team_id = $1 and id = $2', [
    tx.teamId,
    ladderId,
    JSON.stringify(kept),
  ]);
}

function renamed(openings: readonly OpeningState[], names: ReadonlyMap<string, string>): OpeningState[] {
  const of = (name: string) => names.get(name) ?? name;
  return openings.map(({ opens, needsAll, ...opening }) => ({
    ...opening,
    opens: of(opens),
    needsAll: needsAll.map((anyOf) => anyOf.map(of)),
  }));
}
