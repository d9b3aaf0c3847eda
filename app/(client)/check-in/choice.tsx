'use client';

type Option<Value> = { value: Value; label: string };
type Props<Value> = {
  name: string;
  options: readonly Option<Value>[];
  value: Value | null;
  columns: 2 | 3 | 4;
  onChange: (value: Value | null) => void;
};

/** One of a few, each a cell; a second tap takes the answer back. */
export function Choice<Value extends string | number | boolean>({
  name,
  options,
  value,
  columns,
  onChange,
}: Props<Value>) {
  return (
    <fieldset className={`cells cells-${columns}`} aria-label={name}>
      {options.map((option) => (
        <button
          key={String(option.value)}
          type="button"
          className="cell"
          aria-pressed={value === option.value}
          onClick={() => onChange(value === option.value ? null : option.value)}
        >
          {option.label}
        </button>
      ))}
    </fieldset>
  );
}
