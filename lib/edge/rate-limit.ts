import { now } from '#lib/clock.ts';
import { countRequest } from '#lib/db/rate-limits.ts';
import { AppError } from '#lib/errors.ts';

export type RequestLimit = { readonly name: string; readonly max: number; readonly windowSeconds: number };

const HOUR = 3600;
/** Behind no trusted proxy an address is unknown and everybody shares one count: this many people at once. */
const SHARED_BY = 20;

/** How often; our own choices, to be changed with experience. */
export const LIMITS = {
  'check-in': { name: 'check-in', max: 30, windowSeconds: HOUR },
  clip: { name: 'clip', max: 40, windowSeconds: HOUR },
  export: { name: 'export', max: 10, windowSeconds: HOUR },
  'export-team': { name: 'export-team', max: 4, windowSeconds: HOUR },
  import: { name: 'import', max: 60, windowSeconds: HOUR },
  'invite-member': { name: 'invite-member', max: 30, windowSeconds: HOUR },
  join: { name: 'join', max: 20, windowSeconds: HOUR },
  notices: { name: 'notices', max: 60, windowSeconds: HOUR },
  receipt: { name: 'receipt', max: 60, windowSeconds: HOUR },
  replay: { name: 'replay', max: 400, windowSeconds: HOUR },
  still: { name: 'still', max: 30, windowSeconds: HOUR },
  'sign-in-form': { name: 'sign-in-form', max: 30, windowSeconds: HOUR },
  'sign-in-link': { name: 'sign-in-link', max: 20, windowSeconds: HOUR },
  'sign-in-link-address': { name: 'sign-in-link-address', max: 3, windowSeconds: 900 },
} as const satisfies Record<string, RequestLimit>;

/** Counts this request; refuses with the seconds to wait when there were too many. `who`: a user or an address. */
export async function limitRequest(limit: RequestLimit, who: string | null): Promise<void> {
  const max = who === null ? limit.max * SHARED_BY : limit.max;
  const { allowed, retryAfterSeconds } = await countRequest(
    `${limit.name}|${who ?? 'everybody'}`,
    { ...limit, max },
    now(),
  );
  if (allowed) return;
  const wait =
    retryAfterSeconds < 120 ? `${retryAfterSeconds} seconds` : `${Math.ceil(retryAfterSeconds / 60)} minutes`;
  throw new AppError('too-many', `Too many requests of this kind. Try again in ${wait}.`, {
    fields: { 'retry-after': String(retryAfterSeconds) },
  });
}
