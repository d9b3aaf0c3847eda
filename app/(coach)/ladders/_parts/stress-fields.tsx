'use client';

import { TISSUES } from '#lib/domain/vocabulary.ts';
import { TISSUE_WORDS } from '#lib/views/tissue-words.ts';
import forms from '../../clients/_parts/forms.module.css';
import styles from './rung.module.css';
import type { RungPartProps } from './rung-parts.ts';
import { TextField } from './text-field.tsx';

/** The weight of the drill on each tissue. */
export function StressFields({ form, error, onChange }: RungPartProps) {
  return (
    <section aria-labelledby="stress" className={styles.section}>
      <h2 id="stress">Stress by tissue</h2>
      <div className={styles.fields}>
        <p className={forms.hint}>
          0 to 1: how hard the drill is on a tissue beside the hardest there is. Empty is nothing. Loads and
          swaps are worked out from these. Common practice, no source, but for shares and moments that name
          one.
        </p>
        {error('drill.weights') ? <p className={forms.error}>{error('drill.weights')}</p> : null}
        <div className={styles.weights}>
          {TISSUES.map((tissue) => (
            <TextField
              key={tissue}
              id={`weight-${tissue}`}
              kind="number"
              label={TISSUE_WORDS[tissue]}
              error={error(`drill.weights.${tissue}`)}
              value={form.weights[tissue]}
              onChange={(weight) => onChange({ weights: { ...form.weights, [tissue]: weight } })}
            />
          ))}
        </div>
      </div>
    </section>
  );
}
