import type { ConsentKind, GivenConsent } from '#lib/domain/consent.ts';
import type { TeamPg } from './client.ts';

/** Every consent of a client, oldest first. */
export async function listConsents(tx: TeamPg, clientId: string): Promise<GivenConsent[]> {
  const { rows } = await tx.client.query<GivenConsent>(
    `select kind, text_version as "textVersion", given_at as "givenAt", given_by as "givenBy",
       withdrawn_at as "withdrawnAt", withdrawn_by as "withdrawnBy"
     from consent where team_id = $1 and client_id = $2 order by given_at, id`,
    [tx.teamId, clientId],
  );
  return rows;
}

/** Whether the client's consent to this version holds. */
export async function holdsConsent(tx: TeamPg, clientId: string, version: string): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    `select from consent where team_id = $1 and client_id = $2 and kind = 'health-data' and text_version = $3
       and withdrawn_at is null limit 1`,
    [tx.teamId, clientId, version],
  );
  return rowCount !== 0;
}

/** Whether it was taken back and not given since: nothing is checked then. */
export async function isConsentWithdrawn(tx: TeamPg, clientId: string): Promise<boolean> {
  const { rows } = await tx.client.query<{ withdrawn: boolean }>(
    'select is_consent_withdrawn($1, $2) as withdrawn',
    [tx.teamId, clientId],
  );
  return rows[0]?.withdrawn === true;
}

/** Ends what holds of a kind. `by` null: a newer text takes its place. */
export async function endConsents(
  tx: TeamPg,
  of: { clientId: string; kind: ConsentKind; by: string | null; at: Date },
): Promise<number> {
  const { rowCount } = await tx.client.query(
    `update consent set withdrawn_at = $4, withdrawn_by = $5
     where team_id = $1 and client_id = $2 and kind = $3 and withdrawn_at is null`,
    [tx.teamId, of.clientId, of.kind, of.at, of.by],
  );
  return rowCount ?? 0;
}

export async function insertConsent(
  tx: TeamPg,
  given: { clientId: string; kind: ConsentKind; version: string; by: string; at: Date },
): Promise<void> {
  await tx.client.query(
    'insert into consent (team_id, client_id, kind, text_version, given_at, given_by) values ($1, $2, $3, $4, $5, $6)',
    [tx.teamId, given.clientId, given.kind, given.version, given.at, given.by],
  );
}

export type RightsNews = { clientId: string; name: string; withdrawnAt: Date | null; deletedOn: Date | null };

/** Clients of a coach who took their consent back or asked to be deleted, by name. */
export async function listRightsNews(tx: TeamPg, coachId: string): Promise<RightsNews[]> {
  const { rows } = await tx.client.query<RightsNews>(
    `with taken as (select client_id, max(withdrawn_at) as at from consent
       where team_id = $1 and kind = 'health-data' and withdrawn_by is not null group by client_id),
     gone as (select client_id, min(due_at) as at from erasure_ask where team_id = $1 and taken_back_at is null group by client_id)
     select c.id as "clientId", c.name, taken.at as "withdrawnAt", gone.at as "deletedOn"
     from client c left join taken on taken.client_id = c.id left join gone on gone.client_id = c.id
     where c.team_id = $1 and c.coach_id = $2 and c.standing <> 'left'
       and (gone.at is not null or (taken.at is not null and is_consent_withdrawn($1, c.id)))
     order by lower(c.name), c.id`,
    [tx.teamId, coachId],
  );
  return rows;
}
