'use client';
import { type ReactNode, useRef, useState } from 'react';
import type { EarlierReply } from '#lib/views/replies/reply-types.ts';
import { useActs } from '../../_board/acts-store.ts';
import { useAct } from '../../_board/use-act.ts';
import { AnswerPanel } from './answer-panel.tsx';
import styles from './replies.module.css';
import type { KeptChoice } from './use-reply-text.ts';

type Props = {
  reply: { id: string; clientId: string; name: string; earlier: EarlierReply[] };
  kept: KeptChoice[];
  canAnswer: boolean;
  canSee: boolean;
  children: ReactNode;
};

/** One waiting question: what is read (children), answer and seen, and what was done with its undo. */
export function ReplyShell({ reply, kept, canAnswer, canSee, children }: Props) {
  const { id, clientId, name } = reply;
  const [open, setOpen] = useState(false);
  const [seenAct, setSeenAct] = useState<string>();
  const { busy, problem, send, undo } = useAct();
  const self = useRef<HTMLLIElement>(null);
  const acts = useActs();
  const answer = acts.find((act) => act.questionId === id);
  const done = answer ?? acts.find((act) => act.actId === seenAct);
  const folded = answer !== undefined;

  async function sendAnswer(body: { text: string; keptReplyId: string | undefined }) {
    const sent = await send({ act: 'answer', clientId, questionId: id, ...body }, name);
    if (!sent) return;
    setOpen(false);
    requestAnimationFrame(() => nextRow(self.current)?.focus());
  }
  async function see() {
    const sent = await send({ act: 'seen', clientId }, name);
    if (sent) setSeenAct(sent.actId);
  }
  async function takeBack() {
    if (done && (await undo(done.actId))) requestAnimationFrame(() => self.current?.focus());
  }
  function close() {
    setOpen(false);
    self.current?.querySelector<HTMLElement>('[data-act="answer"]')?.focus();
  }
  return (
    <li
      ref={self}
      className={styles.row}
      data-row={id}
      data-name={name}
      data-folded={folded}
      data-open={open || undefined}
      tabIndex={-1}
      aria-label={`Question of ${name}`}
    >
      {folded ? (
        <>
          <p className={styles.foldedName}>{name}</p>
          <p className={styles.foldedLine}>{answer.line}</p>
        </>
      ) : (
        children
      )}
      <div className={styles.toDo}>
        {!folded && (
          <div className={styles.acts}>
            {canAnswer && (
              <button
                type="button"
                data-act="answer"
                aria-expanded={open}
                disabled={busy}
                onClick={() => setOpen(!open)}
              >
                <u>A</u>nswer
              </button>
            )}
            {canSee && (
              <button type="button" data-act="seen" disabled={busy} onClick={see}>
                <u>S</u>een
              </button>
            )}
          </div>
        )}
        {done && !folded && <p className={styles.said}>{done.line}</p>}
        {done && (
          <button type="button" data-undo={done.actId} onClick={takeBack} disabled={busy}>
            <u>U</u>ndo
          </button>
        )}
        <p role="status" className={styles.problem}>
          {problem ?? (done ? <span className="heard-only">{`${name}: ${done.line}`}</span> : null)}
        </p>
      </div>
      {open && !folded && (
        <AnswerPanel reply={reply} kept={kept} busy={busy} answer={sendAnswer} close={close} />
      )}
    </li>
  );
}

function nextRow(row: HTMLElement | null): HTMLElement | null {
  const rows = [...document.querySelectorAll<HTMLElement>('[data-row]')];
  const after = row ? rows.slice(rows.indexOf(row) + 1) : rows;
  return after.find((one) => one.dataset.folded === 'false') ?? row;
}
