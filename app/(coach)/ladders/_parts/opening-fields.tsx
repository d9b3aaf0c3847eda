'use client';

import { SUPPORT_LABELS } from '#lib/domain/labels.ts';
import type { OpeningState } from '#lib/planning/ladders/ladder-state.ts';
import { OPENING_SUPPORTS, type OpeningsForm } from '#lib/views/ladders/opening-form.ts';
import forms from '../../clients/_parts/forms.module.css';
import { ChoiceField } from './choice-field.tsx';
import { OpeningNeeds } from './opening-needs.tsx';
import styles from './openings.module.css';
import { TextField } from './text-field.tsx';

type Props = {
  at: number;
  opening: OpeningState;
  form: OpeningsForm;
  error: (name: string) => string | undefined;
  onChange: (patch: Partial<OpeningState>) => void;
  onRemove: () => void;
};

/** One opening: which rung opens, with what, on which supports at once, and in words. */
export function OpeningFields({ at, opening, form, error, onChange, onRemove }: Props) {
  const id = (name: string) => `opening-${at}-${name}`;
  const { orOnSupports, opens } = opening;
  const known = form.own.some((rung) => rung.id === opens);
  return (
    <fieldset className={styles.opening}>
      <legend>Opening {at + 1}</legend>
      <ChoiceField
        id={id('opens')}
        label="Opens"
        error={error('opens')}
        value={opens}
        options={[
          ...(known ? [] : [{ value: opens, label: opens === '' ? 'choose' : 'a rung not in use' }]),
          ...form.own.map((rung) => ({ value: rung.id, label: rung.label })),
        ]}
        onChange={(rungId) => onChange({ opens: rungId })}
      />
      <OpeningNeeds
        at={at}
        needs={opening.needsAll}
        ladders={form.ladders}
        error={(path) => error(path === '' ? 'needsAll' : `needsAll.${path}`)}
        onChange={(needsAll) => onChange({ needsAll })}
      />
      <fieldset className={styles.ticks}>
        <legend>Or open at once</legend>
        {OPENING_SUPPORTS.map((support) => (
          <label key={support} className={forms.tick}>
            <input
              type="checkbox"
              checked={orOnSupports.includes(support)}
              onChange={(event) =>
                onChange({
                  orOnSupports: event.target.checked
                    ? [...orOnSupports, support]
                    : orOnSupports.filter((one) => one !== support),
                })
              }
            />
            {SUPPORT_LABELS[support]}
          </label>
        ))}
      </fieldset>
      <label className={forms.tick}>
        <input
          type="checkbox"
          checked={opening.under18CoachTick}
          onChange={(event) => onChange({ under18CoachTick: event.target.checked })}
        />
        Under 18 only when the coach allows it
      </label>
      <TextField
        id={id('words')}
        kind="text"
        label="In words"
        hint="The gap finder repeats them where a drill is not open yet."
        error={error('words')}
        value={opening.words}
        onChange={(words) => onChange({ words })}
      />
      <div>
        <button type="button" className={forms.plain} onClick={onRemove}>
          Remove opening {at + 1}
        </button>
      </div>
    </fieldset>
  );
}
