'use client';

import { Field } from '../../_parts/field.tsx';
import type { Plan } from './use-plan.ts';

/** Why it changes, for coaches; and what the client reads about it. */
export function PlanWords({ plan, error }: { plan: Plan; error: (path: string) => string | undefined }) {
  const text = (name: 'why' | 'notes', label: string, hint: string) => (
    <Field id={name} label={label} hint={hint} error={error(name)}>
      {(control) => (
        <textarea
          {...control}
          rows={2}
          value={plan.typed[name]}
          onChange={(event) => plan.set({ [name]: event.target.value })}
        />
      )}
    </Field>
  );
  return (
    <>
      {text('why', 'Why this change', 'Kept with the version, for coaches.')}
      {text('notes', 'Words to the client about this plan', 'Shown on the phone with the plan.')}
    </>
  );
}
