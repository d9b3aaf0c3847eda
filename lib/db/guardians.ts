import type { Guardian } from '#lib/domain/intake/guardian-text.ts';
import type { TeamPg } from './client.ts';
import { idOf } from './id-of.ts';

export type GuardianRow = Guardian & { clientId: string; userId: string | null };

const SELECT = `select g.id, g.client_id as "clientId", g.user_id as "userId", g.name, g.email, g.agreed_at as "agreedAt",
    g.declined_at as "declinedAt", g.withdrawn_at as "withdrawnAt", l.created_at as "linkAt", l.used_at as "openedAt"
  from guardian g left join lateral (select created_at, used_at from entry_link
    where entry_link.team_id = g.team_id and entry_link.guardian_id = g.id order by created_at desc limit 1) l on true`;

/** Parents and guardians of a client, in the order in which they were named. */
export async function listGuardians(tx: TeamPg, clientId: string): Promise<GuardianRow[]> {
  const { rows } = await tx.client.query<GuardianRow>(
    `${SELECT} where g.team_id = $1 and g.client_id = $2 order by g.created_at, g.id`,
    [tx.teamId, clientId],
  );
  return rows;
}

type Which = { guardianId: string } | { userId: string };

export function findGuardian(tx: TeamPg, by: Which): Promise<GuardianRow | undefined> {
  return oneGuardian(tx, by, '');
}

/** Locked: what is decided about it is decided once. */
export function lockGuardian(tx: TeamPg, by: Which): Promise<GuardianRow | undefined> {
  return oneGuardian(tx, by, 'for update of g');
}

async function oneGuardian(tx: TeamPg, by: Which, lock: string): Promise<GuardianRow | undefined> {
  const [column, value] = 'guardianId' in by ? ['id', by.guardianId] : ['user_id', by.userId];
  const { rows } = await tx.client.query<GuardianRow>(
    `${SELECT} where g.team_id = $1 and g.${column} = $2 ${lock}`,
    [tx.teamId, value],
  );
  return rows[0];
}

export async function insertGuardian(
  tx: TeamPg,
  guardian: { clientId: string; name: string; email: string | null; at: Date },
): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    'insert into guardian (team_id, client_id, name, email, created_at) values ($1, $2, $3, $4, $5) returning id',
    [tx.teamId, guardian.clientId, guardian.name, guardian.email, guardian.at],
  );
  return idOf(rows);
}

export async function setGuardianUser(tx: TeamPg, guardianId: string, userId: string): Promise<void> {
  await tx.client.query('update guardian set user_id = $3 where team_id = $1 and id = $2', [
    tx.teamId,
    guardianId,
    userId,
  ]);
}

export async function setGuardianEmail(tx: TeamPg, guardianId: string, email: string): Promise<void> {
  await tx.client.query('update guardian set email = $3 where team_id = $1 and id = $2', [
    tx.teamId,
    guardianId,
    email,
  ]);
}

/** What a guardian decided; the one before is over with it. */
export async function saveGuardianDecision(
  tx: TeamPg,
  decided: {
    guardianId: string;
    decision: 'agreed' | 'declined' | 'withdrawn';
    version: string | null;
    at: Date;
  },
): Promise<void> {
  const at = (decision: typeof decided.decision) => (decided.decision === decision ? decided.at : null);
  await tx.client.query(
    `update guardian set agreed_at = case when $5::timestamptz is not null then agreed_at else $3 end,
       declined_at = $4, withdrawn_at = $5, text_version = coalesce($6, text_version)
     where team_id = $1 and id = $2`,
    [tx.teamId, decided.guardianId, at('agreed'), at('declined'), at('withdrawn'), decided.version],
  );
}
