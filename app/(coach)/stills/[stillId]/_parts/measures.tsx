'use client';

import { useState } from 'react';
import { MASS_MODELS, type MassModel } from '#lib/balance/segment-tables.ts';
import type { Scale } from '#lib/balance/set-up.ts';
import { Field } from '../../../clients/_parts/field.tsx';
import forms from '../../../clients/_parts/forms.module.css';

const MODEL_LABELS: Record<MassModel, string> = {
  'de-leva-women': 'de Leva 1996, women',
  'de-leva-men': 'de Leva 1996, men',
  winter: 'Winter 2009',
};
const STARTS: Record<Scale['by'], number> = { hand: 0.185, stature: 1.7 };

type Props = {
  scale: Scale;
  setScale: (scale: Scale) => void;
  model: MassModel;
  setModel: (model: MassModel) => void;
};

/** What says how long a pixel is, and the table of masses. */
export function Measures({ scale, setScale, model, setModel }: Props) {
  const [typed, setTyped] = useState(String(Math.round(scale.metres * 1000) / 10));
  function type(text: string, by: Scale['by']) {
    setTyped(text);
    const metres = Number(text.replace(',', '.')) / 100;
    if (metres > 0) setScale({ by, metres });
  }
  return (
    <div className={forms.inline}>
      <Field id="scale-by" label="Scale by">
        {(control) => (
          <select
            {...control}
            value={scale.by}
            onChange={(event) => {
              const by = event.target.value as Scale['by'];
              type(String(STARTS[by] * 100), by);
            }}
          >
            <option value="hand">the hand, wrist crease to fingertip</option>
            <option value="stature">the stature</option>
          </select>
        )}
      </Field>
      <Field id="scale-cm" label="How long, cm">
        {(control) => (
          <input
            {...control}
            className={forms.short}
            inputMode="decimal"
            value={typed}
            onChange={(event) => type(event.target.value, scale.by)}
          />
        )}
      </Field>
      <Field id="mass-model" label="Masses by">
        {(control) => (
          <select {...control} value={model} onChange={(event) => setModel(event.target.value as MassModel)}>
            {MASS_MODELS.map((one) => (
              <option key={one} value={one}>
                {MODEL_LABELS[one]}
              </option>
            ))}
          </select>
        )}
      </Field>
    </div>
  );
}
