'use client';
import { useRouter } from 'next/navigation';
import { type FormEvent, type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { replyFields } from '#lib/domain/reply-fields.ts';
import { Field } from '../../clients/_parts/field.tsx';
import { postJson } from '../../clients/_parts/post-json.ts';
import styles from './replies.module.css';

type Props = {
  /** What it starts with: a kept reply to change (`id`), or an answer to keep (`answerId`). */
  start?: { id?: string; name?: string; text: string; answerId?: string };
  close?: () => void;
};
type Refused = { message: string; fields: Record<string, string> };

/** Keeps a reply under a name. What differs each time stands in square brackets, and is filled in by hand. */
export function KeptForm({ start, close }: Props) {
  const id = useId();
  const router = useRouter();
  const form = useRef<HTMLFormElement>(null);
  const [text, setText] = useState(start?.text ?? '');
  const [said, setSaid] = useState('');
  const [refused, setRefused] = useState<Refused | null>(null);
  useEffect(() => {
    if (close) form.current?.querySelector('input')?.focus();
  }, [close]);
  async function onSubmit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const name = String(new FormData(event.currentTarget).get('name') ?? '');
    const { id: keptId, answerId } = start ?? {};
    const body = { name, text, ...(keptId && { id: keptId }), ...(answerId && { answerId }) };
    const answer = await postJson('/api/replies/kept', body);
    setRefused(answer.ok ? null : answer);
    setSaid(answer.ok ? `Kept as “${name}”.` : '');
    if (!answer.ok) return;
    router.refresh();
    if (start?.id) close?.();
    else if (!start) {
      form.current?.reset();
      setText('');
    }
  }
  const onKeyDown = (event: KeyboardEvent) => event.key === 'Escape' && close?.();
  const fields = replyFields(text);
  return (
    <form ref={form} className={styles.form} onSubmit={onSubmit} onKeyDown={onKeyDown} noValidate>
      <Field id={`${id}-name`} label="Name, for you and the team" error={refused?.fields.name}>
        {(control) => <input {...control} name="name" defaultValue={start?.name ?? ''} autoComplete="off" />}
      </Field>
      <Field
        id={`${id}-text`}
        label="Text"
        hint="Put what differs each time in square brackets, such as [rung] or [date]: it has to be filled in by hand before the text goes. [name] is the client’s name and fills itself."
        error={refused?.fields.text}
      >
        {(control) => (
          <textarea {...control} value={text} rows={5} onChange={(event) => setText(event.target.value)} />
        )}
      </Field>
      {fields.length > 0 && (
        <p className={styles.hint}>To fill in: {fields.map((one) => `[${one}]`).join(', ')}</p>
      )}
      {refused && Object.keys(refused.fields).length === 0 && (
        <p role="alert" className={styles.problem}>
          {refused.message}
        </p>
      )}
      <p className={styles.acted}>
        <button type="submit" data-filled>
          {start?.id ? 'Change' : 'Keep'}
        </button>
        {close && (
          <button type="button" onClick={close}>
            {said ? 'Close' : 'Cancel (Esc)'}
          </button>
        )}
        <span role="status">{said}</span>
      </p>
    </form>
  );
}
