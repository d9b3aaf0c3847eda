'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import type { Family } from '#lib/domain/vocabulary.ts';
import { type RungForm, rungBody } from '#lib/views/ladders/rung-form.ts';
import { Field } from '../../clients/_parts/field.tsx';
import forms from '../../clients/_parts/forms.module.css';
import { DrillFields } from './drill-fields.tsx';
import { PassFields } from './pass-fields.tsx';
import styles from './rung.module.css';
import type { SwapChoice } from './rung-parts.ts';
import { SharedDrill } from './shared-drill.tsx';
import { StressFields } from './stress-fields.tsx';
import { SwapFields } from './swap-fields.tsx';
import { useLadderEdit } from './use-ladder-edit.tsx';

type Props = {
  ladder: { ladderId: string; base: string; family: Family };
  target:
    | { rungId: string; sharedWith: string[]; retired: boolean }
    | { above: string | null; places: { id: string; label: string }[] };
  first: RungForm;
  sources: Record<string, string>;
  /** Null for a new rung: its swaps are worked out when it is added. */
  swapRungs: SwapChoice[] | null;
};

/** One rung: what earns the next one, the drill, its stress, its swaps. */
export function RungEditor({ ladder, target, first, sources, swapRungs }: Props) {
  const router = useRouter();
  const [form, setForm] = useState(first);
  const [drillFor, setDrillFor] = useState<'all' | 'this'>('all');
  const [above, setAbove] = useState('above' in target ? target.above : null);
  const { send, busy, error, told } = useLadderEdit(ladder, () => router.push(`/ladders/${ladder.ladderId}`));
  const change = (patch: Partial<RungForm>) => setForm((all) => ({ ...all, ...patch }));
  const parts = { form, error, onChange: change };

  function submit(event: FormEvent) {
    event.preventDefault();
    const { swaps, ...body } = rungBody(form);
    send(
      'rungId' in target
        ? { act: 'rung', rungId: target.rungId, drillFor, ...body, swaps }
        : { act: 'add-rung', above, ...body },
    );
  }

  return (
    <form className={forms.wide} onSubmit={submit} noValidate>
      {told}
      {'places' in target && target.places.length > 0 ? (
        <div className={forms.form}>
          <Field id="above" label="Where it stands" error={error('above')}>
            {(control) => (
              <select
                {...control}
                value={above ?? ''}
                onChange={(event) => setAbove(event.target.value === '' ? null : event.target.value)}
              >
                {target.places.map((place) => (
                  <option key={place.id} value={place.id}>
                    {place.label}
                  </option>
                ))}
                <option value="">as the easiest</option>
              </select>
            )}
          </Field>
        </div>
      ) : null}
      <PassFields {...parts} />
      <DrillFields {...parts} ladderFamily={ladder.family} sources={sources} />
      <StressFields {...parts} />
      {'sharedWith' in target && target.sharedWith.length > 0 ? (
        <SharedDrill others={target.sharedWith} drillFor={drillFor} onChange={setDrillFor} />
      ) : null}
      {swapRungs ? <SwapFields {...parts} rungs={swapRungs} /> : null}
      <div className={`${forms.acts} ${styles.end}`}>
        <button type="submit" className={forms.main} disabled={busy}>
          {'rungId' in target ? 'Save the rung' : 'Add the rung'}
        </button>
        <a className={forms.other} href={`/ladders/${ladder.ladderId}`}>
          Leave without saving
        </a>
        {'rungId' in target ? (
          <button
            type="button"
            className={forms.plain}
            disabled={busy}
            onClick={() =>
              send({ act: target.retired ? 'put-back-rung' : 'retire-rung', rungId: target.rungId })
            }
          >
            {target.retired ? 'Put this rung back' : 'Retire this rung'}
          </button>
        ) : null}
      </div>
    </form>
  );
}
