'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { REGION_LABELS } from '#lib/domain/labels.ts';
import { PAIN_REGIONS, PAIN_SIDES } from '#lib/domain/vocabulary.ts';
import { Field } from '../../_parts/field.tsx';
import { postJson } from '../../_parts/post-json.ts';

type Refused = { message: string; fields: Record<string, string> };

export function ClinicianWordForm({ clientId, today }: { clientId: string; today: string }) {
  const router = useRouter();
  const [refused, setRefused] = useState<Refused | null>(null);
  const [said, setSaid] = useState('');
  const error = (name: string) => refused?.fields[name];

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = event.currentTarget;
    const answer = await postJson(
      `/api/clients/${clientId}/clinician-word`,
      Object.fromEntries([...new FormData(form)].map(([name, value]) => [name, String(value)])),
    );
    setSaid(answer.ok ? 'Recorded. The checks read it on their next run.' : answer.message);
    setRefused(answer.ok ? null : answer);
    if (!answer.ok) return;
    form.reset();
    router.refresh();
  }

  return (
    <form onSubmit={send} noValidate>
      <Field id="word-date" label="Said on" error={error('date')}>
        {(control) => <input {...control} name="date" type="date" defaultValue={today} />}
      </Field>
      <Field id="word-region" label="About" error={error('region')}>
        {(control) => (
          <select {...control} name="region">
            <option value="">the client as a whole</option>
            {PAIN_REGIONS.map((region) => (
              <option key={region} value={region}>
                {REGION_LABELS[region]}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field id="word-side" label="Side" error={error('side')}>
        {(control) => (
          <select {...control} name="side">
            <option value="">not said</option>
            {PAIN_SIDES.map((side) => (
              <option key={side}>{side}</option>
            ))}
          </select>
        )}
      </Field>
      <Field id="word-words" label="What was said" error={error('words')}>
        {(control) => <textarea {...control} name="words" />}
      </Field>
      <Field id="word-review" label="Look again on" error={error('reviewOn')}>
        {(control) => <input {...control} name="reviewOn" type="date" />}
      </Field>
      <p>
        <button type="submit">Record the word</button> <span role="status">{said}</span>
      </p>
    </form>
  );
}
