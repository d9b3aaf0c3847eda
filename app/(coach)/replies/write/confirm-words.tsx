'use client';
import { type RefObject, useId } from 'react';
import { withName } from '#lib/domain/reply-fields.ts';
import styles from '../_parts/replies.module.css';

type Props = {
  dialog: RefObject<HTMLDialogElement | null>;
  chosen: readonly { id: string; name: string }[];
  text: string;
  busy: boolean;
  send: () => void;
};

/** Says the count and every name, and shows the words as the first one will read them. */
export function ConfirmWords({ dialog, chosen, text, busy, send }: Props) {
  const id = useId();
  const [first] = chosen;
  const several = chosen.length > 1;
  return (
    <dialog ref={dialog} aria-labelledby={id}>
      <h2 id={id}>
        {several ? `To ${chosen.length} clients, each as their own` : `To ${first?.name ?? 'nobody'}`}
      </h2>
      {several && <p className={styles.names}>{chosen.map((client) => client.name).join(', ')}</p>}
      {several && <p className={styles.hint}>{first?.name} will read:</p>}
      <blockquote className={styles.keptText}>{withName(text, first?.name ?? '')}</blockquote>
      <p className={styles.acted}>
        <button type="button" data-filled disabled={busy} onClick={send}>
          {several ? `Send to ${chosen.length} clients` : 'Send'}
        </button>
        <button type="button" onClick={() => dialog.current?.close()}>
          Back (Esc)
        </button>
      </p>
    </dialog>
  );
}
