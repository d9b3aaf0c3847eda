import { pool, type TeamPg } from './client.ts';

export type EntryPurpose = 'invitation' | 'sign-in';

type Whose = { clientId: string } | { guardianId: string };

/** A new link of a client or of a guardian; every older one of theirs that still works stops working. */
export async function insertEntryLink(
  tx: TeamPg,
  link: { whose: Whose; tokenHash: string; purpose: EntryPurpose; at: Date; expiresAt: Date },
): Promise<void> {
  const [column, id] =
    'clientId' in link.whose ? ['client_id', link.whose.clientId] : ['guardian_id', link.whose.guardianId];
  await tx.client.query(
    `update entry_link set expires_at = $3 where team_id = $1 and ${column} = $2 and used_at is null and expires_at > $3`,
    [tx.teamId, id, link.at],
  );
  await tx.client.query(
    `insert into entry_link (team_id, ${column}, token_hash, purpose, expires_at, created_at)
     values ($1, $2, $3, $4, $5, $6)`,
    [tx.teamId, id, link.tokenHash, link.purpose, link.expiresAt, link.at],
  );
}

export type UsedLink = {
  teamId: string;
  userId: string;
  clientId: string | null;
  guardianId: string | null;
};

/** Uses a link up, across teams, by one atomic statement: the first caller gets its person, every other nobody. */
export async function takeEntryLink(tokenHash: string, at: Date): Promise<UsedLink | undefined> {
  const { rows } = await pool().query<UsedLink>(
    `select team_id as "teamId", user_id as "userId", client_id as "clientId", guardian_id as "guardianId"
     from use_entry_link($1, $2)`,
    [tokenHash, at],
  );
  return rows[0];
}

/** Clients who may be mailed a sign-in link at this address, across teams. */
export async function listClientsWithEmail(email: string): Promise<{ teamId: string; clientId: string }[]> {
  const { rows } = await pool().query<{ teamId: string; clientId: string }>(
    'select team_id as "teamId", client_id as "clientId" from clients_with_email($1)',
    [email],
  );
  return rows;
}

/** Parents and guardians who may be mailed a link at this address, across teams. */
export async function listGuardiansWithEmail(
  email: string,
): Promise<{ teamId: string; guardianId: string }[]> {
  const { rows } = await pool().query<{ teamId: string; guardianId: string }>(
    'select team_id as "teamId", guardian_id as "guardianId" from guardians_with_email($1)',
    [email],
  );
  return rows;
}
