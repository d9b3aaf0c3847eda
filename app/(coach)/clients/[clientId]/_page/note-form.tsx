'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { postJson } from '../../_parts/post-json.ts';

export function NoteForm({ clientId }: { clientId: string }) {
  const router = useRouter();
  const [text, setText] = useState('');
  const [said, setSaid] = useState('');

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const answer = await postJson(`/api/clients/${clientId}/notes`, { text });
    setSaid(answer.ok ? 'Kept.' : answer.message);
    if (!answer.ok) return;
    setText('');
    router.refresh();
  }

  return (
    <form onSubmit={send}>
      <label htmlFor="note">New note</label>
      <textarea id="note" value={text} onChange={(event) => setText(event.target.value)} />
      <p>
        <button type="submit">Keep the note</button> <span role="status">{said}</span>
      </p>
    </form>
  );
}
