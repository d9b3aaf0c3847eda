'use client';

import { useState } from 'react';
import type { GapFormModel } from '#lib/views/gaps/gap-form.ts';
import { Field } from '../../_parts/field.tsx';
import forms from '../../_parts/forms.module.css';
import { RungOptions } from '../../_parts/rung-options.tsx';
import styles from './gaps.module.css';

/** Which skill, and what of it the client wants to be able to do. A plain address: it can be kept and shared. */
export function AimForm({ model }: { model: GapFormModel }) {
  const [skillId, setSkillId] = useState(model.skillId);
  const skill = model.skills.find((one) => one.id === skillId);
  return (
    <form method="get" className={styles.aim}>
      <Field id="skill" label="Skill">
        {(control) => (
          <select
            {...control}
            name="skill"
            value={skillId}
            onChange={(event) => setSkillId(event.target.value)}
          >
            {model.skills.map((one) => (
              <option key={one.id} value={one.id}>
                {one.name}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field id="aim" label="Aim: what the client wants to be able to do">
        {(control) => (
          <select
            {...control}
            key={skillId}
            name="aim"
            defaultValue={skillId === model.skillId ? model.aimRungId : undefined}
          >
            {skillId === model.skillId ? null : <option value="">the usual one</option>}
            <RungOptions ladders={skill?.ladders ?? []} />
          </select>
        )}
      </Field>
      <button type="submit" className={forms.other}>
        Show its parts
      </button>
    </form>
  );
}
