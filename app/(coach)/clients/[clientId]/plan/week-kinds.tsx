'use client';

import { weeksOf } from '#lib/views/plan-weeks.ts';
import forms from '../../_parts/forms.module.css';
import styles from './plan.module.css';
import type { Plan } from './use-plan.ts';

const KINDS = [
  { value: '', label: 'as planned' },
  { value: 'easyWeeks', label: 'easy: half the sets' },
  { value: 'testWeeks', label: 'test' },
] as const;

/** Which weeks are easy, for a test, or without kit. */
export function WeekKinds({ plan, error }: { plan: Plan; error: string | undefined }) {
  const { typed } = plan;
  const weeks = weeksOf(typed.from, typed.until);
  const kindOf = (date: string) =>
    KINDS.find(({ value }) => value !== '' && typed[value].includes(date))?.value ?? '';
  const without = (all: string[], date: string) => all.filter((one) => one !== date);

  function setKind(date: string, kind: string) {
    const easyWeeks = without(typed.easyWeeks, date);
    const testWeeks = without(typed.testWeeks, date);
    plan.set({
      easyWeeks: kind === 'easyWeeks' ? [...easyWeeks, date] : easyWeeks,
      testWeeks: kind === 'testWeeks' ? [...testWeeks, date] : testWeeks,
    });
  }

  return (
    <fieldset className={forms.fieldset}>
      <legend>Weeks</legend>
      {error ? <p className={forms.error}>{error}</p> : null}
      {weeks.length === 0 ? <p className={forms.hint}>Name a first day to see the weeks.</p> : null}
      <div className={styles.weeks}>
        {weeks.map(({ date, label }) => (
          <div key={date} className={styles.week}>
            <label htmlFor={`week-${date}`}>{label}</label>
            <select
              id={`week-${date}`}
              value={kindOf(date)}
              onChange={(event) => setKind(date, event.target.value)}
            >
              {KINDS.map((kind) => (
                <option key={kind.value} value={kind.value}>
                  {kind.label}
                </option>
              ))}
            </select>
            <label className={forms.tick}>
              <input
                type="checkbox"
                checked={typed.noKitWeeks.includes(date)}
                aria-label={`${label}: without kit`}
                onChange={(event) =>
                  plan.set({
                    noKitWeeks: event.target.checked
                      ? [...typed.noKitWeeks, date]
                      : without(typed.noKitWeeks, date),
                  })
                }
              />
              without kit
            </label>
          </div>
        ))}
      </div>
    </fieldset>
  );
}
