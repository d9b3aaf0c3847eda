'use client';

import { TARGET_UNITS } from '#lib/views/ladders/words.ts';
import forms from '../../clients/_parts/forms.module.css';
import styles from './rung.module.css';
import type { RungPartProps } from './rung-parts.ts';
import { TextField } from './text-field.tsx';

/** Name, pass mark, usual weeks. */
export function PassFields({ form, error, onChange }: RungPartProps) {
  const tries = form.measure === 'made-tried';
  const number = (name: 'sets' | 'target' | 'tries' | 'days' | 'usualWeeks', label: string, path: string) => (
    <TextField
      id={`rung-${name}`}
      kind="number"
      label={label}
      error={error(path)}
      value={form[name]}
      onChange={(value) => onChange({ [name]: value })}
    />
  );
  return (
    <section aria-labelledby="pass-mark" className={styles.section}>
      <h2 id="pass-mark">Pass mark</h2>
      <div className={styles.fields}>
        <TextField
          id="rung-name"
          label="Name of the rung"
          error={error('rung.name')}
          value={form.name}
          onChange={(name) => onChange({ name })}
        />
        <div className={styles.numbers}>
          {tries ? null : number('sets', 'Sets', 'rung.pass.sets')}
          {number('target', `Target, ${TARGET_UNITS[form.measure]}`, 'rung.pass.target')}
          {tries ? number('tries', 'Of tries', 'rung.pass.tries') : null}
          {number('days', 'On how many days', 'rung.pass.days')}
          {number('usualWeeks', 'Usual weeks', 'rung.usualWeeks')}
        </div>
        <label className={forms.tick}>
          <input
            type="checkbox"
            checked={form.needsFilm}
            onChange={(event) => onChange({ needsFilm: event.target.checked })}
          />
          A pass needs a film
        </label>
        <TextField
          id="rung-note"
          kind="text"
          label="Note: what clean means here, what to look for"
          error={error('rung.note')}
          value={form.note}
          onChange={(note) => onChange({ note })}
        />
      </div>
    </section>
  );
}
