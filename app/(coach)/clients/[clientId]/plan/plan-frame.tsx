'use client';

import { Field } from '../../_parts/field.tsx';
import forms from '../../_parts/forms.module.css';
import type { Plan } from './use-plan.ts';

/** From when to when, and how many sessions a week. */
export function PlanFrame({ plan, error }: { plan: Plan; error: (path: string) => string | undefined }) {
  const { typed } = plan;
  const date = (name: 'from' | 'until', label: string) => (
    <Field id={name} label={label} error={error(name)}>
      {(control) => (
        <input
          {...control}
          type="date"
          className={forms.date}
          value={typed[name]}
          onChange={(event) => plan.set({ [name]: event.target.value })}
        />
      )}
    </Field>
  );
  return (
    <div className={forms.inline}>
      {date('from', 'First day')}
      {date('until', 'Last day, or open')}
      <Field id="sessionsPerWeek" label="Sessions a week" error={error('sessionsPerWeek')}>
        {(control) => (
          <input
            {...control}
            inputMode="numeric"
            autoComplete="off"
            className={forms.short}
            value={typed.sessionsPerWeek}
            onChange={(event) => plan.set({ sessionsPerWeek: event.target.value })}
          />
        )}
      </Field>
    </div>
  );
}
