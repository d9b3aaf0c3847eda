import type { NotEnoughHistory, Subject } from '#lib/domain/finding.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { daysHere, newStartAt } from './new-start.ts';
import type { Limits } from './thresholds.ts';
import type { ClientView } from './types.ts';

/** In the first 28 days of a client, or since coming back as new: what is missing, with the count; else `undefined`. */
export function coldStart(
  view: ClientView,
  kind: CheckKind,
  subject: Subject,
  limits: Limits,
): NotEnoughHistory | undefined {
  const needed = limits['coldStart.days'];
  if (daysHere(view) > needed) return undefined;
  const known = view.days.slice(newStartAt(view)).filter((day) => day.state !== 'unknown').length;
  return { status: 'not-enough-history', kind, subject, missing: `${known} of ${needed} days known` };
}
