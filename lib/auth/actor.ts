import { cache } from 'react';
import { findActorInSession } from '#lib/db/accounts.ts';
import { type TeamScope, teamScope } from '#lib/db/client.ts';
import type { Role } from '#lib/domain/vocabulary.ts';
import { auth } from './auth.ts';
import { isSessionOver } from './session-life.ts';

/** Who acts: one person in one team. A guardian's `clientId` is the client they speak for. */
export type Actor = {
  readonly scope: TeamScope;
  readonly userId: string;
  readonly role: Role;
  readonly memberId: string | null;
  readonly clientId: string | null;
  readonly name: string;
  readonly teamName: string;
  /** Where a coach approves what an assistant prepared: the assistant's member id. */
  readonly preparedById?: string;
};

/** The signed-in person, asked of the database each time: a role taken away counts at once. Null when signed out. */
export async function actorOf(headers: Headers): Promise<Actor | null> {
  if (!headers.has('cookie')) return null;
  const found = await auth().api.getSession({ headers });
  if (!found) return null;
  const person = await findActorInSession(found.user.id, found.session.id);
  if (!person || isSessionOver(person.role, person)) return null;
  const { teamId, idle: _idle, age: _age, ...rest } = person;
  return { ...rest, scope: teamScope(teamId), userId: found.user.id };
}

/** The same within one page: layout and page share one look. */
export const actorOfPage = cache(actorOf);
