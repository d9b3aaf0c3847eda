import type { IntakeDraft } from '#lib/domain/intake/draft.ts';
import { read, remove, write } from '../_phone/storage.ts';

/** What the server does not have yet; nothing of it stays on the phone once it has. */
export type KeptIntake = { draft: IntakeDraft; key: string };

const name = (clientId: string) => `intake:${clientId}`;

export function loadKept(clientId: string): KeptIntake | null {
  return read<KeptIntake>(name(clientId));
}

/** False: this browser keeps nothing. */
export function keep(clientId: string, kept: KeptIntake): boolean {
  return write(name(clientId), kept);
}

export function forget(clientId: string): void {
  remove(name(clientId));
}
