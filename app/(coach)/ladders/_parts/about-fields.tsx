'use client';

import { FAULT_LABELS } from '#lib/domain/labels.ts';
import { FAMILIES, FAULTS, type Family, type Fault } from '#lib/domain/vocabulary.ts';
import { FAMILY_WORDS } from '#lib/views/ladders/words.ts';
import { Field } from '../../clients/_parts/field.tsx';
import forms from '../../clients/_parts/forms.module.css';
import styles from './ladders.module.css';

export type About = { name: string; partId: string; family: Family; clean: string; faults: Fault[] };
type Props = {
  about: About;
  parts: { id: string; label: string }[];
  error: (name: string) => string | undefined;
  onChange: (patch: Partial<About>) => void;
};

/** What a ladder is: its name, the part it serves, its kind of stress, what clean means and which faults to name. */
export function AboutFields({ about, parts, error, onChange }: Props) {
  const toggle = (fault: Fault, on: boolean) =>
    onChange({ faults: FAULTS.filter((one) => (one === fault ? on : about.faults.includes(one))) });
  return (
    <>
      <Field id="ladder-name" label="Name of the ladder" error={error('name')}>
        {(control) => (
          <input
            {...control}
            value={about.name}
            onChange={(event) => onChange({ name: event.target.value })}
          />
        )}
      </Field>
      <Field id="ladder-part" label="Part it serves" error={error('partId')}>
        {(control) => (
          <select
            {...control}
            value={about.partId}
            onChange={(event) => onChange({ partId: event.target.value })}
          >
            {parts.some((part) => part.id === about.partId) ? null : (
              <option value={about.partId}>choose</option>
            )}
            {parts.map((part) => (
              <option key={part.id} value={part.id}>
                {part.label}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field
        id="ladder-family"
        label="Kind of stress"
        hint="Checks for stacked stress and the four strength drills of a session read it."
        error={error('family')}
      >
        {(control) => (
          <select
            {...control}
            value={about.family}
            onChange={(event) =>
              onChange({ family: FAMILIES.find((one) => one === event.target.value) ?? about.family })
            }
          >
            {FAMILIES.map((family) => (
              <option key={family} value={family}>
                {FAMILY_WORDS[family]}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field id="ladder-clean" label="What clean means" error={error('clean')}>
        {(control) => (
          <textarea
            {...control}
            rows={3}
            value={about.clean}
            onChange={(event) => onChange({ clean: event.target.value })}
          />
        )}
      </Field>
      <fieldset className={forms.fieldset}>
        <legend>Faults that the phone offers</legend>
        <div className={styles.ticks}>
          {FAULTS.map((fault) => (
            <label key={fault} className={forms.tick}>
              <input
                type="checkbox"
                checked={about.faults.includes(fault)}
                onChange={(event) => toggle(fault, event.target.checked)}
              />
              {FAULT_LABELS[fault]}
            </label>
          ))}
        </div>
      </fieldset>
    </>
  );
}
