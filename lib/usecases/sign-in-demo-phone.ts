import { env } from '#lib/config/env.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { AppError } from '#lib/errors.ts';
import { makeEntryLink } from './make-entry-link.ts';
import { demoScope } from './sign-in-help.ts';

/** Demo only: a fresh entry link of one of the demo's clients. Outside the demo this is not there. */
export async function makeDemoPhoneLink(clientId: string, now: Date): Promise<`/join/${string}`> {
  const scope = await demoScope();
  if (!scope) throw new AppError('not-found', 'This is there in the demo only.');
  const { token } = await withTeamPg(scope, (tx) =>
    makeEntryLink(tx, { clientId, purpose: 'sign-in', origin: env().PLUMBLINE_ORIGIN, at: now }),
  );
  return `/join/${token}`;
}
