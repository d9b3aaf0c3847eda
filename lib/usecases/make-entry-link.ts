import { createHash, randomBytes, randomUUID } from 'node:crypto';
import { insertLinkUser } from '#lib/db/accounts.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { type EntryPurpose, insertEntryLink } from '#lib/db/entry-links.ts';
import { findLinkClient, type LinkClient, setClientUser } from '#lib/db/members.ts';
import { AppError } from '#lib/errors.ts';

const MINUTE_MS = 60_000;
const LIFE_MS: Record<EntryPurpose, number> = {
  invitation: 7 * 24 * 60 * MINUTE_MS,
  'sign-in': 15 * MINUTE_MS,
};
const TOKEN_BYTES = 24; // 192 bits; 128 would do

/** A token that nobody guesses, as it stands in an address. */
export function newToken(): string {
  return randomBytes(TOKEN_BYTES).toString('base64url');
}

/** What is stored of a token: whoever reads the table cannot sign in with it. */
export function hashToken(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}

/** Makes the one link of a client that works, and their account when they have none yet. */
export async function makeEntryLink(
  tx: TeamPg,
  input: { clientId: string; purpose: EntryPurpose; origin: string; at: Date },
): Promise<{ url: string; token: string; expiresAt: Date; client: LinkClient }> {
  const client = await findLinkClient(tx, input.clientId);
  if (!client || client.standing === 'left')
    throw new AppError('not-found', 'This client is not there, or not in your team.');
  if (client.userId === null) {
    const userId = randomUUID();
    await insertLinkUser(tx, { id: userId, name: client.name, at: input.at });
    await setClientUser(tx, client.id, userId);
  }
  const token = newToken();
  const expiresAt = new Date(input.at.getTime() + LIFE_MS[input.purpose]);
  await insertEntryLink(tx, {
    whose: { clientId: client.id },
    tokenHash: hashToken(token),
    purpose: input.purpose,
    at: input.at,
    expiresAt,
  });
  return { url: `${input.origin}/join/${token}`, token, expiresAt, client };
}
