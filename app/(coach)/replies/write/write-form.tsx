'use client';
import { type FormEvent, useId, useRef, useState } from 'react';
import type { Recipient } from '#lib/views/replies/recipients.ts';
import { postJson, textIn } from '../../clients/_parts/post-json.ts';
import { KeptStart } from '../_parts/kept-start.tsx';
import styles from '../_parts/replies.module.css';
import { type KeptChoice, useReplyText } from '../_parts/use-reply-text.ts';
import { ConfirmWords } from './confirm-words.tsx';
import { SentWords } from './sent-words.tsx';
import { Ticks } from './ticks.tsx';

type Props = { clients: Recipient[]; all: number; kept: KeptChoice[] };

/** Left of the line whom, right of it what; sent only after the names were shown. */
export function WriteForm({ clients, all, kept }: Props) {
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const [actId, setActId] = useState<string>();
  const [busy, setBusy] = useState(false);
  const [refused, setRefused] = useState('');
  const [sent, setSent] = useState<{ actId: string; line: string }>();
  const words = useReplyText(null);
  const chosen = clients.filter((client) => ticked.has(client.id));

  function onSubmit(event: FormEvent) {
    event.preventDefault();
    const problem =
      chosen.length === 0
        ? 'Tick at least one client.'
        : words.text.trim() === ''
          ? 'Write your words first.'
          : words.open && `${words.open}.`;
    setRefused(problem);
    if (problem) return words.nextField();
    setActId(crypto.randomUUID());
    dialog.current?.showModal();
  }
  async function send() {
    setBusy(true);
    const { text, keptReplyId } = words;
    const clientIds = chosen.map((client) => client.id);
    const answer = await postJson('/api/replies/words', {
      actId,
      clientIds,
      text,
      ...(keptReplyId && { keptReplyId }),
    });
    setBusy(false);
    dialog.current?.close();
    if (!answer.ok) return setRefused(Object.values(answer.fields)[0] ?? answer.message);
    setSent({ actId: textIn(answer.value, 'actId'), line: textIn(answer.value, 'line') });
    words.write('');
    setTicked(new Set());
  }
  return (
    <div className={styles.write}>
      <Ticks clients={clients} all={all} ticked={ticked} tick={setTicked} />
      <form className={styles.words} onSubmit={onSubmit} noValidate>
        {sent && <SentWords key={sent.actId} {...sent} />}
        <KeptStart kept={kept} start={words.startFromKept} />
        <div>
          <label htmlFor={`${id}-text`}>Your words</label>
          <textarea
            id={`${id}-text`}
            ref={words.field}
            value={words.text}
            onChange={(event) => words.write(event.target.value)}
            aria-describedby={`${id}-hint`}
          />
        </div>
        <p id={`${id}-hint`} className={styles.hint}>
          [name] becomes the name of each client.
          {words.open && (
            <>
              {' '}
              {words.open}.{' '}
              <button type="button" onClick={words.nextField}>
                Next field
              </button>
            </>
          )}
        </p>
        <p role="alert" className={styles.problem}>
          {refused}
        </p>
        <p className={styles.acted}>
          <button type="submit" data-filled>
            {chosen.length === 0 ? 'Look it over' : `Look it over: ${counted(chosen.length)}`}
          </button>
        </p>
      </form>
      <ConfirmWords dialog={dialog} chosen={chosen} text={words.text} busy={busy} send={send} />
    </div>
  );
}

function counted(count: number): string {
  return count === 1 ? '1 client' : `${count} clients`;
}
