import type { PlanDraft } from '#lib/views/plan-draft.ts';
import type { TeamPg } from './client.ts';

export type StoredDraft = {
  id: string;
  by: string | null;
  createdAt: Date;
  usedVersion: number | null;
  /** As it was kept: read it with the schema of drafts. */
  body: unknown;
};

export async function insertPlanDraft(
  tx: TeamPg,
  made: { clientId: string; byId: string | null; draft: PlanDraft; now: Date },
): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into plan_draft (team_id, client_id, by_id, source, reason_id, body, created_at)
     values ($1, $2, $3, $4, $5, $6, $7) returning id`,
    [
      tx.teamId,
      made.clientId,
      made.byId,
      made.draft.source,
      made.draft.reasonId,
      JSON.stringify(made.draft),
      made.now,
    ],
  );
  return rows[0]?.id ?? '';
}

export async function findPlanDraft(
  tx: TeamPg,
  clientId: string,
  draftId: string,
): Promise<StoredDraft | undefined> {
  const { rows } = await tx.client.query<StoredDraft>(
    `select d.id, m.name as by, d.created_at as "createdAt", d.used_version as "usedVersion", d.body
     from plan_draft d left join member m on m.team_id = d.team_id and m.id = d.by_id
     where d.team_id = $1 and d.client_id = $2::uuid and d.id = $3::uuid`,
    [tx.teamId, clientId, draftId],
  );
  return rows[0];
}

/** The version that came of it; a draft that was used before keeps the first. */
export async function markDraftUsed(
  tx: TeamPg,
  used: { clientId: string; draftId: string; version: number; now: Date },
): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    `update plan_draft set used_at = coalesce(used_at, $4), used_version = coalesce(used_version, $5)
     where team_id = $1 and client_id = $2::uuid and id = $3::uuid`,
    [tx.teamId, used.clientId, used.draftId, used.now, used.version],
  );
  return rowCount === 1;
}
