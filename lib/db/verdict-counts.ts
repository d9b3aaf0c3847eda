import type { CheckKind } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

export type VerdictCount = { kind: CheckKind; right: number; notNeeded: number };

/** How often reasons of each kind were right to tell, as the team's coaches said; for one client, or for all. */
export async function countVerdicts(tx: TeamPg, clientId: string | null): Promise<VerdictCount[]> {
  const { rows } = await tx.client.query<VerdictCount>(
    `select r.kind, count(*) filter (where v.right_to_tell)::int as right,
       count(*) filter (where not v.right_to_tell)::int as "notNeeded"
     from verdict v join reason r on r.team_id = v.team_id and r.id = v.reason_id
     where v.team_id = $1 and v.undone_at is null and ($2::uuid is null or r.client_id = $2::uuid)
     group by r.kind order by r.kind`,
    [tx.teamId, clientId],
  );
  return rows;
}
