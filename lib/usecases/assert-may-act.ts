import { URGENT_KINDS } from '#lib/checks/urgency.ts';
import type { ActReason } from '#lib/db/acts.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import type { ReasonAct } from '#lib/schemas/board.ts';
import { mayBeKnown } from '#lib/views/board-reasons.ts';

/** Refuses what an act may not do to these reasons, and says what can be done instead. */
export function assertMayAct(
  input: ReasonAct,
  reasons: readonly ActReason[],
  on: { today: string; zone: string },
): void {
  if (input.act === 'take' || input.act === 'not-known') return;
  const urgent = reasons.some((reason) => URGENT_KINDS.includes(reason.kind));
  if (input.act !== 'known') {
    if (urgent && input.words === '') refuse('words', wordsFirst(input.act));
    return;
  }
  if (urgent) refuse('words', 'a danger sign or pain of 6 or more cannot be folded away as known');
  const raised = reasons.map(({ kind, raisedAt }) => ({
    kind,
    raisedOn: localDateOf(new Date(raisedAt), on.zone),
  }));
  if (!mayBeKnown(raised, on.today))
    refuse('words', 'a row can be folded as known from its third morning on: something here is newer');
}

function wordsFirst(act: 'done' | 'put-aside'): string {
  const verb = act === 'done' ? 'closed' : 'put aside';
  return `a danger sign or pain of 6 or more cannot be ${verb} without words: say why, for the record`;
}

function refuse(field: string, message: string): never {
  throw new AppError('invalid', `${field}: ${message}`, { fields: { [field]: message } });
}
