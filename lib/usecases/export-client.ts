import type { Actor } from '#lib/auth/actor.ts';
import { PACK_PARTS, type PackOptions } from '#lib/handover/pack-content.ts';
import { type MadePack, makePack } from './handover/make-pack.ts';

const WHOLE: PackOptions = {
  period: { from: null, to: null },
  parts: PACK_PARTS.filter((part) => part !== 'notes' && part !== 'fhir'),
  paper: 'A4',
  words: { why: '', forWhom: '', summary: null, next: null, manner: null },
};

/** A client's whole record without choices: the pack with every part but private notes. */
export function exportClient(actor: Actor, clientId: string, now: Date): Promise<MadePack> {
  return makePack(actor, { clientId, options: WHOLE }, now);
}
