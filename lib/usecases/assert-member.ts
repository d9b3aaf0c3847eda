import type { Actor } from '#lib/auth/actor.ts';
import { AppError } from '#lib/errors.ts';

/** The member who acts; clients and guardians are none. */
export function assertMember(actor: Actor): string {
  if (!actor.memberId) throw new AppError('forbidden', 'Only a coach of this team does this.');
  return actor.memberId;
}
