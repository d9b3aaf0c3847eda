import { dangerSign } from '#lib/checks/rules/danger-sign.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import { plainSentence } from './sentence.ts';

/** A danger sign that nobody has cleared: its name, what was said when, and what to do first. */
export type DangerNow = { label: string; sentence: string; step: string };

/** Danger signs of a client that are not cleared, as every screen that plans work has to say first. Empty: none. */
export function dangersNow(view: ClientView): DangerNow[] {
  return dangerSign.evaluate(view, DEFAULT_LIMITS).flatMap((outcome) =>
    outcome.status === 'flagged'
      ? [
          {
            label: outcome.subject.label,
            sentence: plainSentence(outcome.sentence),
            step: outcome.step.text,
          },
        ]
      : [],
  );
}
