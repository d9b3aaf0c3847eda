'use client';
import { cautionsOf } from '#lib/domain/caution.ts';
import { asSentence, DANGER_SIGN_LABELS } from '#lib/domain/labels.ts';
import { DANGER_SIGNS } from '#lib/domain/vocabulary.ts';
import { CautionBox } from '../check-in/caution-box.tsx';
import type { AskProps } from './ask-props.ts';
import { FieldError, Several } from './fields.tsx';

const OPTIONS = DANGER_SIGNS.map((value) => ({ value, label: asSentence(DANGER_SIGN_LABELS[value]) }));

export function AskSigns({ page, change, error, coach }: AskProps<'signs'>) {
  const told = page.signs.map((sign) => ({ sign, region: null, side: null }));
  return (
    <>
      <h1 className="tight">Have you any of these right now?</h1>
      <p className="quiet">
        Now, or in the last days. Any of them: training waits until a clinician has seen you.
      </p>
      <button
        type="button"
        className={`act intake-none ${page.none ? 'act-filled' : ''}`}
        aria-pressed={page.none}
        onClick={() => change('signs', { none: !page.none, signs: [] })}
      >
        None of these
      </button>
      <Several
        name="Danger signs"
        options={OPTIONS}
        values={page.signs}
        onChange={(signs) => change('signs', { signs, none: false })}
      />
      <FieldError id="signs-error" error={error('signs')} />
      <CautionBox cautions={cautionsOf({ pain: [], dangerSigns: told })} coach={coach} />
    </>
  );
}
