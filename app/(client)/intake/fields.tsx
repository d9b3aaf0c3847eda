'use client';
import type { ReactNode } from 'react';

type FieldProps = {
  id: string;
  label: string;
  hint?: string;
  error?: string | undefined;
  value: string;
  onChange: (value: string) => void;
  kind?: 'text' | 'number' | 'email' | 'words';
  most?: number;
};

/** One thing to write, with why it is asked and what is wrong with it. */
export function TextField({
  id,
  label,
  hint,
  error,
  value,
  onChange,
  kind = 'text',
  most = 200,
}: FieldProps) {
  const described = [hint ? `${id}-hint` : '', error ? `${id}-error` : ''].filter(Boolean).join(' ');
  const shared = {
    id,
    value,
    'aria-describedby': described || undefined,
    'aria-invalid': error ? true : undefined,
    onChange: (event: { target: { value: string } }) => onChange(event.target.value),
  };
  return (
    <div className="intake-field">
      <label className="field" htmlFor={id}>
        {label}
      </label>
      {hint ? (
        <p id={`${id}-hint`} className="quiet small">
          {hint}
        </p>
      ) : null}
      {kind === 'words' ? (
        <textarea {...shared} rows={3} maxLength={2_000} dir="auto" />
      ) : (
        <input
          {...shared}
          className="text"
          type={kind === 'email' ? 'email' : 'text'}
          inputMode={kind === 'number' ? 'decimal' : undefined}
          maxLength={kind === 'number' ? 40 : most}
          autoComplete="off"
          dir="auto"
        />
      )}
      <FieldError id={`${id}-error`} error={error} />
    </div>
  );
}

export function FieldError({ id, error }: { id: string; error: string | undefined }) {
  return error ? (
    <p id={id} className="problem">
      {error}
    </p>
  ) : null;
}

/** A question with its cells below. */
export function Question({ title, hint, children }: { title: string; hint?: string; children: ReactNode }) {
  return (
    <div className="intake-field">
      <h2>{title}</h2>
      {hint ? <p className="quiet small">{hint}</p> : null}
      {children}
    </div>
  );
}

/** Some of a list, each a cell that is pressed and released. */
export function Several<Value extends string>({
  name,
  options,
  values,
  columns = 2,
  onChange,
}: {
  name: string;
  options: readonly { value: Value; label: string }[];
  values: readonly Value[];
  columns?: 2 | 3;
  onChange: (values: Value[]) => void;
}) {
  return (
    <fieldset className={`cells cells-${columns}`} aria-label={name}>
      {options.map(({ value, label }) => (
        <button
          key={value}
          type="button"
          className="cell"
          aria-pressed={values.includes(value)}
          onClick={() =>
            onChange(values.includes(value) ? values.filter((one) => one !== value) : [...values, value])
          }
        >
          {label}
        </button>
      ))}
    </fieldset>
  );
}
