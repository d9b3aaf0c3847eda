'use client';

import { PLAN_SESSIONS } from '#lib/domain/plan-sessions.ts';
import { SIDES, type Side } from '#lib/domain/vocabulary.ts';
import type { FormLadder, FormRow } from '#lib/views/plan-form.ts';
import { Field } from '../../_parts/field.tsx';
import styles from '../../_parts/forms.module.css';

type Props = {
  row: FormRow;
  index: number;
  ladders: FormLadder[];
  error: (name: string) => string | undefined;
  onChange: (patch: Partial<FormRow>) => void;
  onRemove: () => void;
};

/** One line of a plan: which rung, which side, how much, how often, in which session. */
export function DrillRow({ row, index, ladders, error, onChange, onRemove }: Props) {
  const ladder = ladders.find((one) => one.id === row.ladderId);
  const rung = ladder?.rungs.find((one) => one.id === row.rungId);
  const skills = [...new Set(ladders.map((one) => one.skill))];
  const id = (name: string) => `drill-${row.key}-${name}`;

  function choose(rungId: string) {
    const chosen = ladder?.rungs.find((one) => one.id === rungId);
    if (!chosen) return onChange({ rungId });
    const side: Side = chosen.eachSide ? row.side : 'both';
    onChange({ rungId, side, sets: String(chosen.passSets), target: String(chosen.passTarget) });
  }

  const amount = (name: 'sets' | 'target' | 'minutes' | 'timesPerWeek', label: string) => (
    <Field id={id(name)} label={label} error={error(name)}>
      {(control) => (
        <input
          {...control}
          inputMode="decimal"
          value={row[name]}
          onChange={(event) => onChange({ [name]: event.target.value })}
        />
      )}
    </Field>
  );

  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as a grid row in every browser
    <div role="group" aria-label={`Drill ${index + 1}`} className={styles.drill}>
      <Field id={id('session')} label="Session" error={error('session')}>
        {(control) => (
          <select
            {...control}
            value={row.session}
            onChange={(event) => onChange({ session: event.target.value })}
          >
            {PLAN_SESSIONS.map((name) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        )}
      </Field>
      <div className={styles.broad}>
        <Field id={id('ladder')} label="Ladder">
          {(control) => (
            <select
              {...control}
              value={row.ladderId}
              onChange={(event) => onChange({ ladderId: event.target.value, rungId: '' })}
            >
              <option value="">choose</option>
              {skills.map((skill) => (
                <optgroup key={skill} label={skill}>
                  {ladders
                    .filter((one) => one.skill === skill)
                    .map((one) => (
                      <option key={one.id} value={one.id}>
                        {one.name}
                      </option>
                    ))}
                </optgroup>
              ))}
            </select>
          )}
        </Field>
      </div>
      <div className={styles.broad}>
        <Field id={id('rung')} label="Rung" error={error('rungId')}>
          {(control) => (
            <select {...control} value={row.rungId} onChange={(event) => choose(event.target.value)}>
              <option value="">choose</option>
              {ladder?.rungs.map((one) => (
                <option key={one.id} value={one.id}>
                  {one.label}
                </option>
              ))}
            </select>
          )}
        </Field>
      </div>
      <Field id={id('side')} label="Side" error={error('side')}>
        {(control) => (
          <select
            {...control}
            value={row.side}
            onChange={(event) => onChange({ side: sideOf(event.target.value) })}
          >
            {SIDES.map((side) => (
              <option
                key={side}
                value={side}
                disabled={side !== 'both' && rung !== undefined && !rung.eachSide}
              >
                {side}
              </option>
            ))}
          </select>
        )}
      </Field>
      {amount('sets', 'Sets')}
      {amount('target', rung ? `Target, ${rung.unit}` : 'Target')}
      {amount('minutes', 'Or minutes')}
      {amount('timesPerWeek', 'Times a week')}
      <button
        type="button"
        className={styles.plain}
        onClick={onRemove}
        aria-label={`Remove drill ${index + 1}`}
      >
        Remove
      </button>
    </div>
  );
}

function sideOf(text: string): Side {
  return SIDES.find((side) => side === text) ?? 'both';
}
