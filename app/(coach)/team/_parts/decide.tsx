'use client';
import Link from 'next/link';
import { type FormEvent, useEffect, useRef } from 'react';
import type { ApprovalShown } from '#lib/usecases/team/load-approvals.ts';
import styles from './team.module.css';

export type Open = 'change' | 'send-back' | null;
type Props = {
  approval: ApprovalShown;
  mayApprove: boolean;
  open: Open;
  busy: boolean;
  setOpen: (open: Open) => void;
  approve: () => void;
  withdraw: () => void;
  send: (event: FormEvent<HTMLFormElement>) => void;
};

/** Right of what would be done: approve, change or send back; for who prepared it: withdraw. */
export function Decide(props: Props) {
  const { approval, mayApprove, open, busy, setOpen, approve, withdraw } = props;
  if (!mayApprove) {
    return (
      <div className={styles.decide}>
        {approval.mine ? (
          <button type="button" data-outlined disabled={busy} onClick={withdraw}>
            Withdraw
          </button>
        ) : (
          <p>waits for a coach</p>
        )}
      </div>
    );
  }
  return (
    <div className={styles.decide}>
      <div className={styles.acts}>
        <button type="button" data-act="approve" data-filled disabled={busy} onClick={approve}>
          <u>A</u>pprove
        </button>
        {approval.act === 'plan' ? (
          <Link href={`/clients/${approval.clientId}/plan?approval=${approval.id}`} data-act="change">
            <u>C</u>hange in the plan
          </Link>
        ) : (
          approval.words !== null && (
            <button
              type="button"
              data-act="change"
              aria-expanded={open === 'change'}
              onClick={() => setOpen(open === 'change' ? null : 'change')}
            >
              <u>C</u>hange
            </button>
          )
        )}
        <button
          type="button"
          data-act="send-back"
          aria-expanded={open === 'send-back'}
          onClick={() => setOpen(open === 'send-back' ? null : 'send-back')}
        >
          Send <u>b</u>ack
        </button>
      </div>
      {open && <WordsForm key={open} {...props} open={open} />}
    </div>
  );
}

function WordsForm({ approval, open, busy, setOpen, send }: Props & { open: 'change' | 'send-back' }) {
  const text = useRef<HTMLTextAreaElement>(null);
  useEffect(() => text.current?.focus(), []);
  const label =
    open === 'change' ? `Words to ${approval.client}` : `What ${approval.preparedBy} is to change`;
  return (
    <form onSubmit={send} onKeyDown={(event) => event.key === 'Escape' && setOpen(null)}>
      <label>
        {label}
        <textarea
          ref={text}
          name="words"
          required={open === 'send-back' || approval.act !== 'step'}
          rows={4}
          dir="auto"
          defaultValue={open === 'change' ? (approval.words ?? '') : ''}
        />
      </label>
      <div className={styles.acts}>
        <button type="submit" data-filled disabled={busy}>
          {open === 'change' ? 'Approve as changed' : 'Send it back'}
        </button>
        <button type="button" onClick={() => setOpen(null)}>
          Cancel (Esc)
        </button>
      </div>
    </form>
  );
}
