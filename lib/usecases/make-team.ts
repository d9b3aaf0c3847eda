import { randomUUID } from 'node:crypto';
import { hashPassword } from 'better-auth/crypto';
import { now as clockNow } from '#lib/clock.ts';
import { insertPasswordUser } from '#lib/db/accounts.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, teamScope, withTeamPg } from '#lib/db/client.ts';
import { copyLibrary } from '#lib/db/library.ts';
import { insertMember, insertTeam, type MemberRole } from '#lib/db/members.ts';
import { AppError } from '#lib/errors.ts';

const PASSWORD_MIN = 12;

export type NewPerson = { name: string; email: string; password: string; zone: string };

/** A team with its lead and its own copy of the library, in one transaction. */
export async function makeTeam(
  input: { name: string; lead: NewPerson },
  now: Date = clockNow(),
): Promise<{ teamId: string; memberId: string; userId: string }> {
  const teamId = randomUUID();
  const passwordHash = await hashOf(input.lead);
  return withTeamPg(teamScope(teamId), async (tx) => {
    await insertTeam(tx, { name: input.name, at: now });
    const ids = await insertPerson(tx, { ...input.lead, passwordHash, role: 'lead' }, now);
    await copyLibrary(tx);
    await insertAudit(
      tx,
      { userId: ids.userId, role: 'lead' },
      { action: 'team-made', objectId: teamId, fields: [] },
    );
    return { teamId, ...ids };
  });
}

/** Hashing takes long on purpose: done before the transaction opens. */
export async function hashOf(person: NewPerson): Promise<string> {
  if (person.password.length < PASSWORD_MIN) {
    const message = `The password is shorter than ${PASSWORD_MIN} characters: take a longer one.`;
    throw new AppError('invalid', message, { fields: { password: message } });
  }
  return hashPassword(person.password);
}

export async function insertPerson(
  tx: TeamPg,
  person: Omit<NewPerson, 'password'> & { passwordHash: string; role: MemberRole },
  now: Date,
): Promise<{ memberId: string; userId: string }> {
  const [userId, memberId] = [randomUUID(), randomUUID()];
  const email = person.email.trim().toLowerCase();
  const { name, zone, role, passwordHash } = person;
  if (!(await insertPasswordUser(tx, { id: userId, name, email, passwordHash, at: now }))) {
    const message = 'Somebody signs in with this e-mail address already: use another one.';
    throw new AppError('conflict', message, { fields: { email: message } });
  }
  await insertMember(tx, { id: memberId, userId, role, name, email, zone, at: now });
  return { memberId, userId };
}
