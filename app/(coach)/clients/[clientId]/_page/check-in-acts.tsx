'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { type DrillSets, type SetChoice, setChoices } from '#lib/views/set-words.ts';
import { postJson } from '../../_parts/post-json.ts';
import styles from './timeline.module.css';

type Props = { clientId: string; checkInId: string; day: string; sets: DrillSets[]; unseen: boolean };

/** Words to the client on this check-in, and that one has seen it; the page stays where it is. */
export function CheckInActs({ clientId, checkInId, day, sets, unseen }: Props) {
  const router = useRouter();
  const opener = useRef<HTMLButtonElement>(null);
  const [open, setOpen] = useState(false);
  const [busy, setBusy] = useState(false);
  const [said, setSaid] = useState('');
  const address = `/api/clients/${clientId}/check-ins/${checkInId}`;

  function close() {
    setOpen(false);
    opener.current?.focus();
  }
  async function post(what: 'words' | 'seen', body: object, done: string): Promise<boolean> {
    setBusy(true);
    const answer = await postJson(`${address}/${what}`, body);
    setBusy(false);
    setSaid(answer.ok ? done : answer.message);
    if (answer.ok) router.refresh();
    return answer.ok;
  }
  async function send(text: string, chosen: SetChoice | undefined) {
    const set = chosen ? { rungId: chosen.rungId, side: chosen.side, index: chosen.index } : null;
    if (await post('words', { set, text }, 'Sent. It stands on the phone now.')) close();
  }
  async function seen() {
    if (await post('seen', {}, 'Marked. The client sees it on the phone.')) opener.current?.focus();
  }

  return (
    <>
      <div className={styles.entryActs}>
        <button
          type="button"
          ref={opener}
          aria-expanded={open}
          aria-label={`Write words: the check-in of ${day}`}
          onClick={() => setOpen(!open)}
        >
          Write words
        </button>
        {unseen ? (
          <button
            type="button"
            disabled={busy}
            aria-label={`Mark as seen: the check-in of ${day}`}
            onClick={() => void seen()}
          >
            Mark as seen
          </button>
        ) : null}
        <span role="status">{said}</span>
      </div>
      {open ? <WordsForm day={day} sets={sets} busy={busy} send={send} close={close} /> : null}
    </>
  );
}

type FormProps = Pick<Props, 'day' | 'sets'> & {
  busy: boolean;
  send: (text: string, chosen: SetChoice | undefined) => Promise<void>;
  close: () => void;
};

function WordsForm({ day, sets, busy, send, close }: FormProps) {
  const text = useRef<HTMLTextAreaElement>(null);
  const choices = setChoices(sets);
  useEffect(() => text.current?.focus(), []);
  const onSubmit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const about = String(new FormData(event.currentTarget).get('about') ?? '');
    void send(text.current?.value ?? '', about === '' ? undefined : choices[Number(about)]);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLFormElement>) => {
    if (event.key === 'Escape') close();
    if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) event.currentTarget.requestSubmit();
  };
  return (
    <form
      className={styles.write}
      aria-label={`Words on the check-in of ${day}`}
      onSubmit={onSubmit}
      onKeyDown={onKeyDown}
    >
      <label>
        About
        <select name="about">
          <option value="">the day</option>
          {choices.map((set, at) => (
            <option key={`${set.rungId} ${set.side} ${set.index}`} value={at}>
              {set.label}
            </option>
          ))}
        </select>
      </label>
      <label>
        Words to the client
        <textarea ref={text} rows={3} required maxLength={4_000} dir="auto" />
      </label>
      <div className={styles.entryActs}>
        <button type="submit" data-filled disabled={busy}>
          Send the words
        </button>
        <button type="button" onClick={close}>
          Cancel (Esc)
        </button>
      </div>
    </form>
  );
}
