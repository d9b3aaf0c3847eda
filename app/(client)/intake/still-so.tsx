'use client';
import type { IntakeDraft, IntakeStep } from '#lib/domain/intake/draft.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { longDate } from '#lib/views/phone-dates.ts';
import type { ChangePage } from './use-intake.ts';

type Props = { step: 'signs' | 'pain'; draft: IntakeDraft; aged: IntakeStep[]; change: ChangePage };

/** What was told days ago about now: one tap when it is still so, else it is changed below. */
export function StillSo({ step, draft, aged, change }: Props) {
  const at = draft[step]?.at;
  if (!at || !aged.includes(step)) return null;
  const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
  return (
    <section className="before-training" aria-label="Asked again">
      <p>
        You told this on {longDate(localDateOf(new Date(at), timeZone))}. How is it now? Change it below, or:
      </p>
      <button type="button" className="act" onClick={() => change(step, {})}>
        It is still so
      </button>
    </section>
  );
}
