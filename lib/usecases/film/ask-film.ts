import type { Actor } from '#lib/auth/actor.ts';
import type { FilmAsk } from '#lib/schemas/clip.ts';
import { type PreparedDone, prepareAct } from '../team/prepare-act.ts';

/** Asks a client for a film: done at once, or kept for approval as every act of an assistant. */
export function askFilm(
  actor: Actor,
  input: { clientId: string; film: FilmAsk },
  now: Date,
): Promise<PreparedDone> {
  return prepareAct(actor, { act: 'ask-film', clientId: input.clientId, body: input.film }, now);
}
