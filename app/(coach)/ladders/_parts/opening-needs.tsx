'use client';

import type { OpeningsForm } from '#lib/views/ladders/opening-form.ts';
import { Field } from '../../clients/_parts/field.tsx';
import forms from '../../clients/_parts/forms.module.css';
import { RungOptions } from '../../clients/_parts/rung-options.tsx';
import styles from './openings.module.css';

type Props = {
  at: number;
  needs: string[][];
  ladders: OpeningsForm['ladders'];
  /** By place, "1.0"; empty: of all of them. */
  error: (path: string) => string | undefined;
  onChange: (needs: string[][]) => void;
};

/** What must stand: all lines, of each line any one rung. */
export function OpeningNeeds({ at, needs, ladders, error, onChange }: Props) {
  const change = (need: number, anyOf: string[]) =>
    onChange(
      anyOf.length === 0
        ? needs.toSpliced(need, 1)
        : needs.map((one, index) => (index === need ? anyOf : one)),
    );
  return (
    <fieldset className={styles.needs}>
      <legend className="heard-only">What must stand before</legend>
      {error('') ? <p className={forms.error}>{error('')}</p> : null}
      {needs.map((anyOf, need) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place
        <div key={need} className={styles.need}>
          {anyOf.map((rungId, choice) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a choice is its place
            <div key={choice} className={styles.choice}>
              <Field
                id={`opening-${at}-need-${need}-${choice}`}
                label={choice > 0 ? 'or' : need > 0 ? 'and' : 'Asks for'}
                error={error(`${need}.${choice}`)}
              >
                {(control) => (
                  <select
                    {...control}
                    value={rungId}
                    onChange={(event) => change(need, anyOf.with(choice, event.target.value))}
                  >
                    <Unknown rungId={rungId} ladders={ladders} />
                    <RungOptions ladders={ladders} />
                  </select>
                )}
              </Field>
              <button
                type="button"
                className={forms.plain}
                onClick={() => change(need, anyOf.toSpliced(choice, 1))}
              >
                Take away
                <span className="heard-only">
                  {' '}
                  rung {choice + 1} of line {need + 1}
                </span>
              </button>
            </div>
          ))}
          <button type="button" className={forms.plain} onClick={() => change(need, [...anyOf, ''])}>
            Or another rung<span className="heard-only"> for line {need + 1}</span>
          </button>
        </div>
      ))}
      <button
        id={`opening-${at}-more`}
        type="button"
        className={forms.plain}
        onClick={() => onChange([...needs, ['']])}
      >
        {needs.length === 0 ? 'Ask for a rung' : 'And another rung'}
      </button>
    </fieldset>
  );
}

function Unknown({ rungId, ladders }: { rungId: string; ladders: Props['ladders'] }) {
  if (ladders.some(({ rungs }) => rungs.some((rung) => rung.id === rungId))) return null;
  return <option value={rungId}>{rungId === '' ? 'choose' : 'a rung not in use'}</option>;
}
