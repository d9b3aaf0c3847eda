'use client';

import { FILM_SHOWS, type FilmShows } from '#lib/planning/gaps/gap-types.ts';
import { FILM_WORDS, type FormPart, type FormSide } from '#lib/views/gaps/gap-form.ts';
import { Field } from '../../_parts/field.tsx';
import styles from './gaps.module.css';

type Props = {
  part: FormPart;
  error: (name: string) => string | undefined;
  onChange: (patch: Partial<FormPart>) => void;
  onSide: (at: number, patch: Partial<FormSide>) => void;
};

/** One part: what is asked of it, and on each side what was seen. */
export function PartFields({ part, error, onChange, onSide }: Props) {
  const id = (name: string) => `${part.ladderId}-${name}`;
  return (
    <fieldset className={styles.part}>
      <legend>{part.part}</legend>
      <div className={styles.asked}>
        <p className={styles.about}>{part.about}</p>
        <Field id={id('asked')} label="Asked" hint={part.why} error={error('askedRungId')}>
          {(control) => (
            <select
              {...control}
              value={part.askedRungId}
              onChange={(event) => onChange({ askedRungId: event.target.value })}
            >
              <Rungs part={part} />
            </select>
          )}
        </Field>
      </div>
      <div className={styles.sides}>
        {part.sides.map((side, at) => (
          <SideFields
            key={side.side}
            part={part}
            side={side}
            error={(name) => error(`sides.${at}.${name}`)}
            onChange={(patch) => onSide(at, patch)}
          />
        ))}
      </div>
    </fieldset>
  );
}

type SideProps = {
  part: FormPart;
  side: FormSide;
  error: (name: string) => string | undefined;
  onChange: (patch: Partial<FormSide>) => void;
};

function SideFields({ part, side, error, onChange }: SideProps) {
  const id = (name: string) => `${part.ladderId}-${side.side}-${name}`;
  const isRange = part.measure === 'range-up' || part.measure === 'range-down';
  const isTries = part.measure === 'made-tried';
  const number = (name: 'sets' | 'value' | 'pain', label: string) => (
    <Field id={id(name)} label={label} error={error(name)}>
      {(control) => (
        <input
          {...control}
          inputMode="decimal"
          value={side[name]}
          onChange={(event) => onChange({ [name]: event.target.value })}
        />
      )}
    </Field>
  );
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as a grid row in every browser
    <div
      role="group"
      aria-label={side.side === 'both' ? part.part : `${part.part}, ${side.side}`}
      className={styles.side}
    >
      {side.side === 'both' ? null : <p className={styles.which}>{side.side}</p>}
      <div className={styles.film}>
        <Field id={id('film')} label="Film shows" error={error('film')}>
          {(control) => (
            <select
              {...control}
              value={side.film}
              onChange={(event) => onChange({ film: filmOf(event.target.value) })}
            >
              {FILM_SHOWS.map((film) => (
                <option key={film} value={film}>
                  {FILM_WORDS[film]}
                </option>
              ))}
            </select>
          )}
        </Field>
      </div>
      <div className={styles.on}>
        <Field id={id('rung')} label="Last result on" error={error('rungId')}>
          {(control) => (
            <select
              {...control}
              value={side.rungId}
              onChange={(event) => onChange({ rungId: event.target.value })}
            >
              <option value="">no result</option>
              <Rungs part={part} />
            </select>
          )}
        </Field>
      </div>
      {isRange ? null : number('sets', isTries ? 'Tries' : 'Sets')}
      {number('value', isTries ? 'Made' : isRange ? `Range, ${part.unit}` : `Each, ${part.unit}`)}
      <Field id={id('clean')} label="Clean" error={error('clean')}>
        {(control) => (
          <select
            {...control}
            value={side.clean}
            onChange={(event) => onChange({ clean: cleanOf(event.target.value) })}
          >
            <option value="">not said</option>
            <option value="yes">yes</option>
            <option value="no">no</option>
          </select>
        )}
      </Field>
      {number('pain', 'Pain, 0-10')}
    </div>
  );
}

function Rungs({ part }: { part: FormPart }) {
  return part.rungs.map((rung) => (
    <option key={rung.id} value={rung.id}>
      {rung.label}
    </option>
  ));
}

function filmOf(text: string): FilmShows {
  return FILM_SHOWS.find((film) => film === text) ?? 'not-seen';
}

function cleanOf(text: string): FormSide['clean'] {
  return text === 'yes' || text === 'no' ? text : '';
}
