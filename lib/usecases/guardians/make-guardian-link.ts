import { env } from '#lib/config/env.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { insertEntryLink } from '#lib/db/entry-links.ts';
import { hashToken, newToken } from '../make-entry-link.ts';

/** Makes the one link of a parent or guardian that works; `tokenHash` is all that is kept of it. */
export async function makeGuardianLink(
  tx: TeamPg,
  { guardianId, lifeMs, at }: { guardianId: string; lifeMs: number; at: Date },
): Promise<{ url: string; tokenHash: string; expiresAt: Date }> {
  const token = newToken();
  const tokenHash = hashToken(token);
  const expiresAt = new Date(at.getTime() + lifeMs);
  await insertEntryLink(tx, { whose: { guardianId }, tokenHash, purpose: 'invitation', at, expiresAt });
  return { url: `${env().PLUMBLINE_ORIGIN}/guardian/${token}`, tokenHash, expiresAt };
}
