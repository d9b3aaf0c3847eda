import type { FormLadder } from '#lib/views/plan-form.ts';
import { Field } from '../../_parts/field.tsx';

type LadderProps = {
  id: string;
  ladders: FormLadder[];
  value: string;
  hint: string;
  onChange: (ladderId: string) => void;
};

export function LadderField({ id, ladders, value, hint, onChange }: LadderProps) {
  const skills = [...new Set(ladders.map((one) => one.skill))];
  return (
    <Field id={id} label="Ladder" hint={hint}>
      {(control) => (
        <select {...control} value={value} onChange={(event) => onChange(event.target.value)}>
          <option value="">choose</option>
          {skills.map((skill) => (
            <optgroup key={skill} label={skill}>
              {ladders
                .filter((one) => one.skill === skill)
                .map((one) => (
                  <option key={one.id} value={one.id}>
                    {one.name}
                  </option>
                ))}
            </optgroup>
          ))}
        </select>
      )}
    </Field>
  );
}

type RungProps = {
  id: string;
  ladder: FormLadder | undefined;
  value: string;
  error: string | undefined;
  onChange: (rungId: string) => void;
};

export function RungField({ id, ladder, value, error, onChange }: RungProps) {
  return (
    <Field id={id} label="Rung" error={error}>
      {(control) => (
        <select {...control} value={value} onChange={(event) => onChange(event.target.value)}>
          <option value="">choose</option>
          {ladder?.rungs.map((one) => (
            <option key={one.id} value={one.id}>
              {one.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
