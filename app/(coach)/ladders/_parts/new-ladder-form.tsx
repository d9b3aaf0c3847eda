'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import forms from '../../clients/_parts/forms.module.css';
import { postJson, textIn } from '../../clients/_parts/post-json.ts';
import { type About, AboutFields } from './about-fields.tsx';

const EMPTY: About = { name: '', partId: '', family: 'balance', clean: '', faults: ['stopped-by-pain'] };

export function NewLadderForm({ parts }: { parts: { id: string; label: string }[] }) {
  const router = useRouter();
  const [about, setAbout] = useState(EMPTY);
  const [refused, setRefused] = useState<{ message: string; fields: Record<string, string> } | null>(null);
  const [busy, setBusy] = useState(false);

  async function submit(event: FormEvent) {
    event.preventDefault();
    setBusy(true);
    const answer = await postJson('/api/ladders', about);
    setBusy(false);
    if (answer.ok) return router.push(`/ladders/${textIn(answer.value, 'ladderId')}`);
    setRefused(answer);
    window.scrollTo(0, 0);
  }

  return (
    <form className={forms.form} onSubmit={submit} noValidate>
      {refused ? (
        <p role="alert" className={forms.refusal}>
          {refused.message}
        </p>
      ) : null}
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
