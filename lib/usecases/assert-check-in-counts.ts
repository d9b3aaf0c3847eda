import { findCheckInState } from '#lib/db/check-in-words.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { AppError } from '#lib/errors.ts';

/** The check-in is this client's and still counts: what a coach says goes to what stands on the page. */
export async function assertCheckInCounts(
  tx: TeamPg,
  at: { clientId: string; checkInId: string },
): Promise<void> {
  const state = await findCheckInState(tx, at);
  if (!state) throw new AppError('not-found', 'This is not there, or not in your team.');
  if (state.deleted)
    throw new AppError(
      'conflict',
      'The client has deleted this check-in. Nothing was sent. Open the page again.',
    );
  if (state.replaced)
    throw new AppError(
      'conflict',
      'The client has corrected this check-in since. Nothing was sent. Open the page again to see what it says now.',
    );
}
