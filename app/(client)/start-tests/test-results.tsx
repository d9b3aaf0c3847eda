'use client';
import type { PhoneTest } from '#lib/views/start/phone-tests.ts';
import { Stepper } from '../check-in/stepper.tsx';
import type { TestDraft } from './test-draft.ts';

type Props = { test: PhoneTest; draft: TestDraft; onChange: (patch: Partial<TestDraft>) => void };

/** A field for every set, or how many tries were good, or the one measure of a range. */
export function TestResults({ test, draft, onChange }: Props) {
  const put = (at: number, value: number) =>
    onChange({ values: draft.values.map((one, index) => (index === at ? value : one)) });
  if (test.counting === 'tries')
    return (
      <>
        <Stepper
          label="good ones"
          value={draft.values[0] ?? null}
          unit=""
          kind="count"
          most={draft.tried ?? test.sets}
          onChange={(value) => put(0, value)}
        />
        <Stepper
          label="tries"
          value={draft.tried}
          unit=""
          kind="count"
          least={1}
          most={test.sets}
          onChange={(tried) => onChange({ tried })}
        />
      </>
    );
  const label = test.counting === 'range' ? test.unit : test.kind === 'seconds' ? 'seconds' : 'reps';
  return draft.values.map((value, at) => (
    <Stepper
      // biome-ignore lint/suspicious/noArrayIndexKey: sets have no other name than their number
      key={at}
      label={draft.values.length > 1 ? `set ${at + 1}, ${label}` : label}
      value={value}
      unit={test.unit}
      kind={test.kind}
      step={test.counting === 'range' ? 5 : 1}
      least={test.least}
      most={test.most}
      onChange={(next) => put(at, next)}
    />
  ));
}
