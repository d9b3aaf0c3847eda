import type { Actor } from '#lib/auth/actor.ts';
import { type MadePack, makePack } from './handover/make-pack.ts';
import { WHOLE_RECORD } from './handover/whole-record.ts';

/** A client's whole record without choices: the pack with every part but private notes. */
export function exportClient(actor: Actor, clientId: string, now: Date): Promise<MadePack> {
  return makePack(actor, { clientId, options: WHOLE_RECORD }, now);
}
