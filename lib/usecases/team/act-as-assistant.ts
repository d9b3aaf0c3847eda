import type { Actor } from '#lib/auth/actor.ts';
import { AppError } from '#lib/errors.ts';
import type { BoardAct } from '#lib/schemas/board.ts';
import type { UndoDone } from '../undo-loose-act.ts';
import { type PreparedDone, prepareAct } from './prepare-act.ts';
import { undoOwnAct } from './undo-own-act.ts';

/** What an assistant may do on the board: answer and take steps, kept for approval where there is no leave; undo own acts. */
export function actAsAssistant(actor: Actor, body: BoardAct, now: Date): Promise<PreparedDone | UndoDone> {
  if (body.act === 'answer') return prepareAct(actor, { act: 'answer', clientId: body.clientId, body }, now);
  if (body.act === 'take') return prepareAct(actor, { act: 'step', clientId: body.clientId, body }, now);
  if (body.act === 'undo') return undoOwnAct(actor, body, now);
  throw new AppError('forbidden', 'An assistant prepares answers, steps and plans. A coach does this one.');
}
