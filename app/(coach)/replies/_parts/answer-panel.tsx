'use client';
import { type FormEvent, type KeyboardEvent, useEffect, useId, useState } from 'react';
import type { EarlierReply } from '#lib/views/replies/reply-types.ts';
import { EarlierList } from './earlier-list.tsx';
import { FindEarlier } from './find-earlier.tsx';
import { KeptStart } from './kept-start.tsx';
import styles from './replies.module.css';
import { type KeptChoice, useReplyText } from './use-reply-text.ts';

type Props = {
  reply: { name: string; earlier: EarlierReply[] };
  kept: KeptChoice[];
  busy: boolean;
  answer: (body: { text: string; keptReplyId: string | undefined }) => void;
  close: () => void;
};

/** Opens under the question: left of the line what was answered before, right of it the answer. */
export function AnswerPanel({ reply, kept, busy, answer, close }: Props) {
  const { name } = reply;
  const id = useId();
  const [found, setFound] = useState<EarlierReply[] | null>(null);
  const [refused, setRefused] = useState('');
  const words = useReplyText(name);
  const { field } = words;
  useEffect(() => field.current?.focus(), [field]);

  function onSubmit(event: FormEvent) {
    event.preventDefault();
    const problem = words.text.trim() === '' ? 'Write an answer first.' : words.open && `${words.open}.`;
    setRefused(problem);
    if (problem) return words.nextField();
    answer({ text: words.text, keptReplyId: words.keptReplyId });
  }
  function onKeyDown(event: KeyboardEvent) {
    if (event.key === 'Escape') close();
    if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) onSubmit(event);
  }
  return (
    <>
      <div className={styles.earlier}>
        <FindEarlier found={setFound} close={close} />
        {found === null && reply.earlier.length > 0 && (
          <p className={styles.hint}>Answered before, by the words of this question:</p>
        )}
        {found?.length === 0 && <p className={styles.hint}>No earlier answer holds these words.</p>}
        <EarlierList answers={found ?? reply.earlier} start={words.startFrom} />
      </div>
      <form className={styles.panel} onSubmit={onSubmit} noValidate>
        <KeptStart kept={kept} start={words.startFromKept} />
        <div>
          <label htmlFor={`${id}-text`}>Answer to {name}</label>
          <textarea
            id={`${id}-text`}
            ref={words.field}
            value={words.text}
            onChange={(event) => words.write(event.target.value)}
            onKeyDown={onKeyDown}
            aria-invalid={refused !== '' && words.open !== ''}
            aria-describedby={`${id}-open`}
          />
        </div>
        <p id={`${id}-open`} className={styles.hint}>
          {words.open && (
            <>
              {refused === '' && `${words.open}. `}
              <button type="button" onClick={words.nextField}>
                Next field
              </button>
            </>
          )}
        </p>
        <p role="alert" className={styles.problem}>
          {refused}
        </p>
        <div className={styles.send}>
          <button type="submit" data-filled disabled={busy}>
            Send answer
          </button>
          <button type="button" onClick={close}>
            Cancel (Esc)
          </button>
        </div>
      </form>
    </>
  );
}
