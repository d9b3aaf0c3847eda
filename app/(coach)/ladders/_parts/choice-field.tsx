'use client';

import { Field } from '../../clients/_parts/field.tsx';

type Props<Value extends string> = {
  id: string;
  label: string;
  hint?: string;
  error?: string | undefined;
  value: Value;
  options: { value: Value; label: string }[];
  onChange: (value: Value) => void;
};

/** A labelled choice out of a closed list. */
export function ChoiceField<Value extends string>(props: Props<Value>) {
  const { id, label, hint, error, value, options, onChange } = props;
  return (
    <Field id={id} label={label} error={error} {...(hint ? { hint } : {})}>
      {(control) => (
        <select
          {...control}
          value={value}
          onChange={(event) => {
            const chosen = options.find((option) => option.value === event.target.value);
            if (chosen) onChange(chosen.value);
          }}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
