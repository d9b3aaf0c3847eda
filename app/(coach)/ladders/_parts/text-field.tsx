'use client';

import { Field } from '../../clients/_parts/field.tsx';
import styles from './rung.module.css';

type Props = {
  id: string;
  label: string;
  hint?: string;
  error?: string | undefined;
  value: string;
  /** A number is short, with the number keys on a phone. */
  kind?: 'words' | 'number' | 'text';
  onChange: (value: string) => void;
};

/** A labelled line, number or text. */
export function TextField({ id, label, hint, error, value, kind = 'words', onChange }: Props) {
  return (
    <div className={kind === 'number' ? styles.number : undefined}>
      <Field id={id} label={label} error={error} {...(hint ? { hint } : {})}>
        {(control) =>
          kind === 'text' ? (
            <textarea
              {...control}
              rows={2}
              value={value}
              onChange={(event) => onChange(event.target.value)}
            />
          ) : (
            <input
              {...control}
              {...(kind === 'number' ? { inputMode: 'decimal' as const } : {})}
              value={value}
              onChange={(event) => onChange(event.target.value)}
            />
          )
        }
      </Field>
    </div>
  );
}
