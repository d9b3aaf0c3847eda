import { pool, type TeamPg } from './client.ts';
import type { MemberRole } from './members.ts';

export type InvitationRow = {
  id: string;
  role: MemberRole;
  email: string;
  by: string;
  createdAt: Date;
  expiresAt: Date;
};

/** Invitations that nobody has used or withdrawn, also those out of date: they can be renewed. Newest first. */
export async function listInvitations(tx: TeamPg): Promise<InvitationRow[]> {
  const { rows } = await tx.client.query<InvitationRow>(
    `select i.id, i.role, i.email, m.name as by, i.created_at as "createdAt", i.expires_at as "expiresAt"
     from member_invitation i join member m on m.team_id = i.team_id and m.id = i.by_id
     where i.team_id = $1 and i.used_at is null and i.withdrawn_at is null order by i.created_at desc, i.id`,
    [tx.teamId],
  );
  return rows;
}

export type NewInvitation = {
  byId: string;
  role: MemberRole;
  email: string;
  tokenHash: string;
  at: Date;
  expiresAt: Date;
};

export async function insertInvitation(tx: TeamPg, made: NewInvitation): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into member_invitation (team_id, by_id, role, email, token_hash, created_at, expires_at)
     values ($1, $2, $3, $4, $5, $6, $7) returning id`,
    [tx.teamId, made.byId, made.role, made.email, made.tokenHash, made.at, made.expiresAt],
  );
  return rows[0]?.id ?? '';
}

/** A new link for an invitation that still waits; the link before it stops working. */
export async function renewInvitation(
  tx: TeamPg,
  invitationId: string,
  link: { tokenHash: string; expiresAt: Date },
): Promise<InvitationRow | undefined> {
  const { rowCount } = await tx.client.query(
    `update member_invitation set token_hash = $3, expires_at = $4
     where team_id = $1 and id = $2 and used_at is null and withdrawn_at is null`,
    [tx.teamId, invitationId, link.tokenHash, link.expiresAt],
  );
  if (rowCount === 0) return undefined;
  return (await listInvitations(tx)).find((one) => one.id === invitationId);
}

/** Withdraws an invitation that waits, or with null takes that back. False: there is none. */
export async function setWithdrawn(tx: TeamPg, invitationId: string, at: Date | null): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    `update member_invitation set withdrawn_at = $3
     where team_id = $1 and id = $2 and used_at is null and (withdrawn_at is null) <> ($3::timestamptz is null)`,
    [tx.teamId, invitationId, at],
  );
  return rowCount === 1;
}

/** The team that an invitation belongs to, across teams, while its link works. */
export async function findInvitedTeam(tokenHash: string, at: Date): Promise<string | undefined> {
  const { rows } = await pool().query<{ teamId: string }>(
    'select team_id as "teamId" from invited_team($1, $2)',
    [tokenHash, at],
  );
  return rows[0]?.teamId;
}

/** Uses the invitation up, in the transaction that makes the member: the first caller gets it, every other nothing. */
export async function takeInvitation(
  tx: TeamPg,
  tokenHash: string,
  at: Date,
): Promise<{ id: string; role: MemberRole; email: string } | undefined> {
  const { rows } = await tx.client.query<{ id: string; role: MemberRole; email: string }>(
    `update member_invitation set used_at = $3
     where team_id = $1 and token_hash = $2 and used_at is null and withdrawn_at is null and expires_at > $3
     returning id, role, email`,
    [tx.teamId, tokenHash, at],
  );
  return rows[0];
}

export async function setInvitationMember(tx: TeamPg, invitationId: string, memberId: string): Promise<void> {
  await tx.client.query('update member_invitation set member_id = $3 where team_id = $1 and id = $2', [
    tx.teamId,
    invitationId,
    memberId,
  ]);
}
