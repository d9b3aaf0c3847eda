import type { Role } from '#lib/domain/vocabulary.ts';
import { pool, type TeamPg } from './client.ts';

export type FoundActor = {
  teamId: string;
  teamName: string;
  role: Role;
  memberId: string | null;
  clientId: string | null;
  name: string;
};

const ACTOR = `team_id as "teamId", team_name as "teamName", role, member_id as "memberId", client_id as "clientId", name`;

/** Who a user is, across teams: through the one definer function that may look. */
export async function findActor(userId: string): Promise<FoundActor | undefined> {
  const { rows } = await pool().query<FoundActor>(`select ${ACTOR} from actor_of($1)`, [userId]);
  return rows[0];
}

/**
 * The same for somebody in a session, with the minutes since it was last used and since it began; marks it used (at most
 * every five minutes). Every request asks this.
 */
export async function findActorInSession(
  userId: string,
  sessionId: string,
): Promise<(FoundActor & { idle: number; age: number }) | undefined> {
  const { rows } = await pool().query<FoundActor & { idle: number; age: number }>({
    name: 'actor-in-session',
    text: `with before as (select id, updated_at, created_at from session where id = $2),
        touched as (
          update session s set updated_at = now() from before
          where s.id = before.id and before.updated_at < now() - interval '5 minutes'
        )
      select ${ACTOR}, extract(epoch from now() - updated_at)::float8 / 60 as idle,
        extract(epoch from now() - created_at)::float8 / 60 as age
      from before, actor_of($1)`,
    values: [userId, sessionId],
  });
  return rows[0];
}

/** A user with no way in by password; used for clients and guardians. The address is never mailed to. */
export async function insertLinkUser(
  tx: TeamPg,
  user: { id: string; name: string; at: Date },
): Promise<void> {
  await tx.client.query(
    `insert into "user" (id, name, email, email_verified, created_at, updated_at) values ($1, $2, $3, true, $4, $4)`,
    [user.id, user.name, `${user.id}@link-only.invalid`, user.at],
  );
}

/** A user who signs in by password. False when the address is taken. */
export async function insertPasswordUser(
  tx: TeamPg,
  user: { id: string; name: string; email: string; passwordHash: string; at: Date },
): Promise<boolean> {
  const made = await tx.client.query(
    `insert into "user" (id, name, email, email_verified, created_at, updated_at) values ($1, $2, $3, true, $4, $4)
     on conflict (email) do nothing`,
    [user.id, user.name, user.email, user.at],
  );
  if (made.rowCount === 0) return false;
  await tx.client.query(
    `insert into account (user_id, account_id, provider_id, password, created_at, updated_at)
     values ($1::uuid, $1::uuid::text, 'credential', $2, $3, $3)`,
    [user.id, user.passwordHash, user.at],
  );
  return true;
}

export async function findUserId(email: string): Promise<string | undefined> {
  const { rows } = await pool().query<{ id: string }>('select id from "user" where email = $1', [
    email.toLowerCase(),
  ]);
  return rows[0]?.id;
}
