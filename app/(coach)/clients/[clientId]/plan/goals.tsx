'use client';

import { useState } from 'react';
import type { FormGoal } from '#lib/views/plan-form.ts';
import { Field } from '../../_parts/field.tsx';
import forms from '../../_parts/forms.module.css';
import styles from './plan.module.css';
import type { Plan } from './use-plan.ts';

type Props = {
  plan: Plan;
  skills: { id: string; name: string }[];
  error: (path: string) => string | undefined;
};

/** Skills in focus, each with the date it is wanted by or none. */
export function Goals({ plan, skills, error }: Props) {
  const { goals } = plan.typed;
  const [chosen, setChosen] = useState('');
  const set = (at: number, patch: Partial<FormGoal>) =>
    plan.set({ goals: goals.map((goal, index) => (index === at ? { ...goal, ...patch } : goal)) });
  const left = skills.filter(({ id }) => !goals.some((goal) => goal.skillId === id));
  const name = (id: string) =>
    skills.find((skill) => skill.id === id)?.name ?? 'a skill no longer in the ladders';
  function add() {
    plan.set({ goals: [...goals, { skillId: chosen, wantedBy: '' }] });
    setChosen('');
  }

  return (
    <fieldset className={forms.fieldset}>
      <legend>Skills in focus</legend>
      {goals.length === 0 ? <p className={forms.hint}>None yet. Two at once usually go well.</p> : null}
      {goals.map((goal, index) => (
        <div key={goal.skillId} className={styles.goal}>
          <span className={styles.goalName}>{name(goal.skillId)}</span>
          <Field
            id={`goal-${goal.skillId}`}
            label="Wanted by, or no date"
            error={error(`goals.${index}.wantedBy`) ?? error(`goals.${index}.skillId`)}
          >
            {(control) => (
              <input
                {...control}
                type="date"
                className={forms.date}
                value={goal.wantedBy}
                onChange={(event) => set(index, { wantedBy: event.target.value })}
              />
            )}
          </Field>
          <button
            type="button"
            aria-label={`Take out of focus: ${name(goal.skillId)}`}
            onClick={() => plan.set({ goals: goals.filter((one) => one !== goal) })}
          >
            Take out
          </button>
        </div>
      ))}
      <div className={styles.goal}>
        <Field id="add-skill" label="Another skill">
          {(control) => (
            <select {...control} value={chosen} onChange={(event) => setChosen(event.target.value)}>
              <option value="">choose</option>
              {left.map((skill) => (
                <option key={skill.id} value={skill.id}>
                  {skill.name}
                </option>
              ))}
            </select>
          )}
        </Field>
        <button type="button" disabled={chosen === ''} onClick={add}>
          Put it in focus
        </button>
      </div>
    </fieldset>
  );
}
