import { headers } from 'next/headers';
import { notFound, redirect } from 'next/navigation';
import { cache } from 'react';
import { type TeamScope, withTeamPg } from '#lib/db/client.ts';
import { holdsConsent } from '#lib/db/consents.ts';
import { CONSENT_VERSION } from '#lib/domain/consent.ts';
import type { Role } from '#lib/domain/vocabulary.ts';
import { type Actor, actorOfPage } from './actor.ts';
import { may, type Permission } from './permissions.ts';

/** Where a person lands after signing in. */
export function homeOf(role: Role): '/' | '/today' | '/guardian' {
  if (role === 'guardian') return '/guardian';
  return role === 'client' ? '/today' : '/';
}

/** Pages of a client that wait until the text in force has been read and agreed to. */
const AFTER_CONSENT: readonly Permission[] = ['check-in', 'see-own-training'];

const isAgreed = cache((scope: TeamScope, clientId: string) =>
  withTeamPg(scope, (tx) => holdsConsent(tx, clientId, CONSENT_VERSION)),
);

/**
 * For pages: the signed-in person if they may see this one. Signed out goes to the sign-in page; a page of others is
 * not there. The board's address is also the product's front door, so clients who knock there are shown home.
 */
export async function requireActor(permission: Exclude<Permission, 'open'>): Promise<Actor> {
  const actor = await actorOfPage(await headers());
  if (!actor) redirect('/sign-in');
  if (may(actor.role, permission)) {
    const waits = actor.clientId !== null && AFTER_CONSENT.includes(permission);
    if (waits && !(await isAgreed(actor.scope, actor.clientId ?? '')))
      redirect(actor.role === 'guardian' ? '/guardian' : '/consent');
    return actor;
  }
  if (permission === 'see-board') redirect(homeOf(actor.role));
  notFound();
}
