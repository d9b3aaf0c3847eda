'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useMemo, useState } from 'react';
import { refusedPlaces } from '#lib/views/ladders/refused-places.ts';
import forms from '../../clients/_parts/forms.module.css';
import { postJson, textIn } from '../../clients/_parts/post-json.ts';
import { RefusedPlaces } from '../../clients/_parts/refused-places.tsx';
import { type About, AboutFields } from './about-fields.tsx';

const EMPTY: About = { name: '', partId: '', family: 'balance', clean: '', faults: ['stopped-by-pain'] };

export function NewLadderForm({ parts }: { parts: { id: string; label: string }[] }) {
  const router = useRouter();
  const [about, setAbout] = useState(EMPTY);
  const [refused, setRefused] = useState<{ message: string; fields: Record<string, string> } | null>(null);
  const [busy, setBusy] = useState(false);
  const places = useMemo(() => refusedPlaces(refused?.fields ?? {}), [refused]);

  async function submit(event: FormEvent) {
    event.preventDefault();
    setBusy(true);
    const answer = await postJson('/api/ladders', about);
    setBusy(false);
    if (answer.ok) return router.push(`/ladders/${textIn(answer.value, 'ladderId')}`);
    setRefused(answer);
  }

  return (
    <form className={forms.form} onSubmit={submit} noValidate>
      {refused ? <RefusedPlaces message={refused.message} places={places} /> : null}
      <AboutFields
        about={about}
        parts={parts}
        error={(name) => refused?.fields[name]}
        onChange={(patch) => setAbout((all) => ({ ...all, ...patch }))}
      />
      <div className={forms.acts}>
        <button type="submit" className={forms.main} disabled={busy}>
          Make the ladder
        </button>
      </div>
    </form>
  );
}
