import type { ReactNode } from 'react';
import styles from './forms.module.css';

type Props = {
  id: string;
  label: string;
  hint?: string;
  error?: string | undefined;
  /** Gets the ids that describe the control and whether it is refused. */
  children: (control: {
    id: string;
    'aria-describedby': string | undefined;
    'aria-invalid': boolean;
  }) => ReactNode;
};

/** A labelled control with its hint and, after a refusal, what is wrong with it. */
export function Field({ id, label, hint, error, children }: Props) {
  const described = [hint ? `${id}-hint` : '', error ? `${id}-error` : ''].filter(Boolean).join(' ');
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      {children({ id, 'aria-describedby': described || undefined, 'aria-invalid': error !== undefined })}
      {hint ? (
        <p id={`${id}-hint`} className={styles.hint}>
          {hint}
        </p>
      ) : null}
      {error ? (
        <p id={`${id}-error`} className={styles.error}>
          {error}
        </p>
      ) : null}
    </div>
  );
}
