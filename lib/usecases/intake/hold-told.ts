import type { TeamPg } from '#lib/db/client.ts';
import { fillSwaps } from '#lib/db/swaps.ts';
import { insertToldHold } from '#lib/db/told-holds.ts';
import { heldBy, isSign, type ToldAtStart, toldInWords } from '#lib/domain/intake/told-at-start.ts';

/** Holds what each yes holds, from a day of the client on. Phone, plan and checks go by it as by every limit. */
export async function holdTold(
  tx: TeamPg,
  { clientId, told, from, at }: { clientId: string; told: readonly ToldAtStart[]; from: string; at: Date },
): Promise<void> {
  if (told.length === 0) return;
  // Teams made before there were swaps get theirs with the first limit that needs them.
  await fillSwaps(tx);
  for (const one of told) {
    await insertToldHold(tx, {
      clientId,
      told: one,
      rule: heldBy(one),
      from,
      who: isSign(one) ? 'a danger sign told at the start' : 'the health questions at the start',
      words: `Said yes at the start: ${toldInWords(one)}. Until a clinician’s word is recorded.`,
      at,
    });
  }
}
