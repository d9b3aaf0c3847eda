'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { filmSecond } from '#lib/views/looking/film-second.ts';
import { Field } from '../../../clients/_parts/field.tsx';
import forms from '../../../clients/_parts/forms.module.css';
import { postJson, textIn } from '../../../clients/_parts/post-json.ts';
import styles from './looking.module.css';

export type Said = {
  client: string;
  words: { id: string; atSeconds: number; moment: string; text: string; by: string; read: string }[];
};
type Props = Said & {
  clipId: string;
  at: number;
  settled: () => Promise<number>;
  pause: () => void;
  seek: (seconds: number) => void;
};

/** Words to the client at the moment that is shown, and those that stand already: each goes to its moment. */
export function SayHere({ clipId, client, words, at, settled, pause, seek }: Props) {
  const router = useRouter();
  const [text, setText] = useState('');
  const [said, setSaid] = useState('');
  const [refused, setRefused] = useState<{ message: string; text?: string | undefined } | null>(null);
  const [busy, setBusy] = useState(false);

  async function post(body: object) {
    setBusy(true);
    const answer = await postJson(`/api/clips/${clipId}/words`, body);
    setBusy(false);
    setRefused(answer.ok ? null : { message: answer.message, text: answer.fields.text });
    setSaid(answer.ok ? textIn(answer.value, 'line') : '');
    if (answer.ok) router.refresh();
    return answer.ok;
  }
  async function send(event: FormEvent) {
    event.preventDefault();
    setBusy(true); // until it is known which frame stays
    if (await post({ act: 'words', atSeconds: await settled(), text })) setText('');
  }
  return (
    <section aria-labelledby="words-head">
      <h2 id="words-head">Words at a moment</h2>
      <form className={forms.form} onSubmit={(event) => void send(event)}>
        <Field
          id="film-words"
          label={`To ${client}, at ${filmSecond(at)}`}
          hint="What is seen, not what is wrong with the person."
          error={refused?.text}
        >
          {(control) => (
            <textarea
              {...control}
              rows={3}
              dir="auto"
              value={text}
              onFocus={pause}
              onChange={(event) => setText(event.target.value)}
            />
          )}
        </Field>
        <div className={forms.acts}>
          <button type="submit" className={forms.main} disabled={busy}>
            Say it at {filmSecond(at)}
          </button>
          <span role="status">{said}</span>
        </div>
        {refused && !refused.text && (
          <p role="alert" className={forms.error}>
            {refused.message}
          </p>
        )}
      </form>
      {words.length > 0 && (
        <ul className={styles.list} aria-label="Words on this film">
          {words.map(({ id, atSeconds, moment, text: words, by, read }) => (
            <li key={id}>
              <button type="button" className={styles.jump} onClick={() => seek(atSeconds)}>
                <span className="heard-only">To </span>
                {moment}
              </button>
              <span>
                <q dir="auto">{words}</q>
                <span className={styles.hint}>
                  {' '}
                  {by}
                  {read ? `, ${read}` : ', not read yet'}
                </span>
              </span>
              {!read && (
                <button
                  type="button"
                  className={forms.plain}
                  disabled={busy}
                  onClick={() => void post({ act: 'undo', id })}
                >
                  Take back<span className="heard-only"> the words at {moment}</span>
                </button>
              )}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
