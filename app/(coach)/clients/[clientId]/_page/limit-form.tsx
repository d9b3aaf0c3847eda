'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { asSentence, REGION_LABELS } from '#lib/domain/labels.ts';
import { PAIN_REGIONS, PAIN_SIDES, TISSUES } from '#lib/domain/vocabulary.ts';
import { TISSUE_WORDS } from '#lib/views/tissue-words.ts';
import { Field } from '../../_parts/field.tsx';
import { postJson } from '../../_parts/post-json.ts';

type Refused = { message: string; fields: Record<string, string> };

export function LimitForm({ clientId, today }: { clientId: string; today: string }) {
  const router = useRouter();
  const [refused, setRefused] = useState<Refused | null>(null);
  const [said, setSaid] = useState('');
  const [rule, setRule] = useState('none');
  const error = (name: string) => refused?.fields[name];

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = event.currentTarget;
    const answer = await postJson(`/api/clients/${clientId}/limits`, bodyOf(new FormData(form)));
    setSaid(answer.ok ? 'Set. The phone goes by it now, the checks from their next run.' : answer.message);
    setRefused(answer.ok ? null : answer);
    if (!answer.ok) return;
    form.reset();
    setRule('none');
    router.refresh();
  }

  return (
    <form onSubmit={send} noValidate>
      <Field id="limit-rule" label="What holds" error={error('rule')}>
        {(control) => (
          <select {...control} name="rule" value={rule} onChange={(event) => setRule(event.target.value)}>
            <option value="none">Nothing for this place</option>
            <option value="reduced">Less for this place</option>
            <option value="no-floor">No hands on the floor</option>
            <option value="no-overhead">Nothing overhead</option>
            <option value="no-upside-down">Nothing upside down</option>
          </select>
        )}
      </Field>
      {rule === 'reduced' ? (
        <Field id="limit-percent" label="Per cent of the sets left" error={error('percent')}>
          {(control) => <input {...control} name="percent" inputMode="decimal" defaultValue="50" />}
        </Field>
      ) : null}
      {rule === 'none' || rule === 'reduced' ? <Place error={error('region') ?? error('tissue')} /> : null}
      {rule === 'no-upside-down' ? null : <SideField error={error('side')} />}
      <Field id="limit-from" label="First day" error={error('from')}>
        {(control) => <input {...control} name="from" type="date" defaultValue={today} />}
      </Field>
      <Field id="limit-until" label="Last day" hint="Empty: until further word" error={error('until')}>
        {(control) => <input {...control} name="until" type="date" />}
      </Field>
      <Field id="limit-who" label="Said by" error={error('who')}>
        {(control) => <input {...control} name="who" autoComplete="off" defaultValue="the coach" />}
      </Field>
      <Field id="limit-words" label="In their words (can be left out)" error={error('words')}>
        {(control) => <textarea {...control} name="words" />}
      </Field>
      <p>
        <button type="submit">Set the limit</button> <span role="status">{said}</span>
      </p>
    </form>
  );
}

function SideField({ error }: { error: string | undefined }) {
  return (
    <Field id="limit-side" label="Side" error={error}>
      {(control) => (
        <select {...control} name="side">
          <option value="">both sides</option>
          {PAIN_SIDES.filter((side) => side !== 'middle').map((side) => (
            <option key={side}>{side}</option>
          ))}
        </select>
      )}
    </Field>
  );
}

function Place({ error }: { error: string | undefined }) {
  return (
    <Field id="limit-place" label="Place" error={error}>
      {(control) => (
        <select {...control} name="place">
          <option value="">everything</option>
          <optgroup label="What drills load">
            {TISSUES.map((tissue) => (
              <option key={tissue} value={`tissue ${tissue}`}>
                {TISSUE_WORDS[tissue]}
              </option>
            ))}
          </optgroup>
          <optgroup label="Where it hurts">
            {PAIN_REGIONS.map((region) => (
              <option key={region} value={`region ${region}`}>
                {asSentence(REGION_LABELS[region])}
              </option>
            ))}
          </optgroup>
        </select>
      )}
    </Field>
  );
}

/** The place is one list on the screen and two fields in what is sent. */
function bodyOf(form: FormData): Record<string, string> {
  const { place = '', ...fields } = Object.fromEntries(
    [...form].map(([name, value]) => [name, String(value)]),
  );
  const [kind, name] = place.split(' ');
  return kind && name ? { ...fields, [kind]: name } : fields;
}
