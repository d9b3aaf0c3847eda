import type { Readable } from 'node:stream';
import type { Actor } from '#lib/auth/actor.ts';
import { AppError } from '#lib/errors.ts';
import { exportClient } from '#lib/usecases/export-client.ts';

/** The client's own record, whole, without asking anybody. Notes that coaches wrote for themselves are not in it. */
export function takeOwnRecord(actor: Actor, now: Date): Promise<{ fileName: string; zip: Readable }> {
  if (!actor.clientId) throw new AppError('forbidden', 'Only a client has an own record here.');
  return exportClient(actor, actor.clientId, now);
}
