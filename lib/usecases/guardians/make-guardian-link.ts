import { randomBytes } from 'node:crypto';
import { env } from '#lib/config/env.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { insertGuardianLink } from '#lib/db/guardians.ts';
import { hashToken } from '../make-entry-link.ts';

const TOKEN_BYTES = 24; // 192 bits; 128 would do

/** Makes the one link of a parent or guardian that works; `tokenHash` is all that is kept of it. */
export async function makeGuardianLink(
  tx: TeamPg,
  { guardianId, lifeMs, at }: { guardianId: string; lifeMs: number; at: Date },
): Promise<{ url: string; tokenHash: string; expiresAt: Date }> {
  const token = randomBytes(TOKEN_BYTES).toString('base64url');
  const tokenHash = hashToken(token);
  const expiresAt = new Date(at.getTime() + lifeMs);
  await insertGuardianLink(tx, { guardianId, tokenHash, at, expiresAt });
  return { url: `${env().PLUMBLINE_ORIGIN}/guardian/${token}`, tokenHash, expiresAt };
}
