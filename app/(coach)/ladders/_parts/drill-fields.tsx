'use client';

import { EQUIPMENT_LABELS, KIT, STANDS_ON } from '#lib/domain/equipment.ts';
import { FAMILIES, type Family, MEASURES } from '#lib/domain/vocabulary.ts';
import { FAMILY_WORDS, MEASURE_WORDS } from '#lib/views/ladders/words.ts';
import forms from '../../clients/_parts/forms.module.css';
import { ChoiceField } from './choice-field.tsx';
import styles from './rung.module.css';
import type { RungPartProps } from './rung-parts.ts';
import { ShareFields } from './share-fields.tsx';
import { TextField } from './text-field.tsx';

const SIDES = {
  both: 'both sides together',
  each: 'each side, a pass mark of its own',
  leg: 'each leg in turn, both hands',
} as const;
type Per = keyof typeof SIDES;

type Props = RungPartProps & { ladderFamily: Family; sources: Record<string, string> };

/** What is done: how it is counted, on which sides, how slowly, on what, how much of the body it carries. */
export function DrillFields({ form, error, onChange, ladderFamily, sources }: Props) {
  const counted = form.measure === 'reps' || form.measure === 'made-tried';
  const toggle = (name: string, on: boolean) =>
    onChange({ equipment: on ? [...form.equipment, name] : form.equipment.filter((one) => one !== name) });
  const ticks = (legend: string, names: readonly (keyof typeof EQUIPMENT_LABELS)[]) => (
    <fieldset className={forms.fieldset}>
      <legend>{legend}</legend>
      <div className={styles.ticks}>
        {names.map((name) => (
          <label key={name} className={forms.tick}>
            <input
              type="checkbox"
              checked={form.equipment.includes(name)}
              onChange={(event) => toggle(name, event.target.checked)}
            />
            {EQUIPMENT_LABELS[name]}
          </label>
        ))}
      </div>
    </fieldset>
  );
  return (
    <section aria-labelledby="drill" className={styles.section}>
      <h2 id="drill">Drill</h2>
      <div className={styles.fields}>
        <div className={styles.pair}>
          <ChoiceField
            id="drill-measure"
            label="Counted as"
            error={error('measure') ?? error('drill.measure')}
            value={form.measure}
            options={MEASURES.map((measure) => ({ value: measure, label: MEASURE_WORDS[measure] }))}
            onChange={(measure) => onChange({ measure })}
          />
          <ChoiceField
            id="drill-per"
            label="Sides"
            error={error('per')}
            value={form.per}
            options={(['both', 'each', 'leg'] satisfies Per[]).map((per) => ({
              value: per,
              label: SIDES[per],
            }))}
            onChange={(per) => onChange({ per })}
          />
          <ChoiceField
            id="drill-family"
            label="Kind of stress"
            error={error('drill.family')}
            value={form.family}
            options={[
              { value: '', label: `as the ladder: ${FAMILY_WORDS[ladderFamily]}` },
              ...FAMILIES.map((family) => ({ value: family, label: FAMILY_WORDS[family] })),
            ]}
            onChange={(family) => onChange({ family })}
          />
          {counted ? (
            <TextField
              id="drill-tempo"
              kind="number"
              label={form.measure === 'reps' ? 'Tempo, seconds a rep' : 'Tempo, seconds a try'}
              error={error('drill.secondsPerRep')}
              value={form.secondsPerRep}
              onChange={(secondsPerRep) => onChange({ secondsPerRep })}
            />
          ) : null}
        </div>
        <ShareFields form={form} error={error} onChange={onChange} sources={sources} />
        {ticks('Done on, any one of', STANDS_ON)}
        {ticks('Needs beside it', KIT)}
        <label className={forms.tick}>
          <input
            type="checkbox"
            checked={form.upsideDown}
            onChange={(event) => onChange({ upsideDown: event.target.checked })}
          />
          Upside down: the head comes below the heart, also on the way in or out. Held while a health question
          waits for a clinician’s word.
        </label>
        <TextField
          id="drill-camera"
          kind="text"
          label="Where the camera stands"
          error={error('drill.camera')}
          value={form.camera}
          onChange={(camera) => onChange({ camera })}
        />
      </div>
    </section>
  );
}
