'use client';
import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import { postJson } from '../../_phone/post-json.ts';

/** A question without a check-in. What is typed stays in the field until it has arrived. */
export function AskForm({ coach }: { coach: string }) {
  const router = useRouter();
  const id = useRef<string | null>(null);
  const [text, setText] = useState('');
  const [state, setState] = useState<{ busy: boolean; said: string }>({ busy: false, said: '' });
  const send = async () => {
    if (state.busy || text.trim() === '') return;
    setState({ busy: true, said: '' });
    id.current ??= crypto.randomUUID();
    const problem = await postJson('/api/questions', { id: id.current, text });
    setState({ busy: false, said: problem ?? `Sent to ${coach}.` });
    if (problem) return;
    id.current = null;
    setText('');
    router.refresh();
  };
  const change = (changed: string) => {
    id.current = null; // another text is another question
    setText(changed);
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <label className="field">
        Ask {coach}
        <textarea
          rows={3}
          maxLength={4_000}
          dir="auto"
          value={text}
          onChange={(event) => change(event.target.value)}
        />
      </label>
      <p role="status" className="quiet">
        {state.said}
      </p>
      <button type="submit" className="act" disabled={state.busy || text.trim() === ''}>
        Send the question
      </button>
    </form>
  );
}
