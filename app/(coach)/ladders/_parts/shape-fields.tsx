'use client';

import type { ShapeTexts } from '#lib/views/ladders/split-steps.ts';
import forms from '../../clients/_parts/forms.module.css';
import styles from './split.module.css';
import { TextField } from './text-field.tsx';

type Props = { id: string; legend: string; shape: ShapeTexts; onChange: (shape: ShapeTexts) => void };

/** The three angles of a planche or lever. */
export function ShapeFields({ id, legend, shape, onChange }: Props) {
  const angle = (name: keyof ShapeTexts, label: string, hint: string) => (
    <TextField
      id={`${id}-${name}`}
      kind="number"
      label={label}
      hint={hint}
      value={shape[name]}
      onChange={(value) => onChange({ ...shape, [name]: value })}
    />
  );
  return (
    <fieldset className={forms.fieldset}>
      <legend>{legend}</legend>
      <div className={styles.angles}>
        {angle('hip', 'Hip, degrees', '0 straight, 90 thigh straight down')}
        {angle('shank', 'Shins, degrees', '0 level, -20 heels above the knees')}
        {angle('straddle', 'Straddle, degrees', 'each leg; 0 legs together')}
      </div>
    </fieldset>
  );
}
