'use client';
import { useRouter } from 'next/navigation';
import { type FormEvent, useEffect, useRef, useState } from 'react';
import { postJson, textIn } from '../clients/_parts/post-json.ts';
import styles from './step-draft.module.css';

export type ShownDraft = {
  reasonId: string;
  step: string;
  planVersion: number;
  does: string[];
  words: string;
  opensInPlan: boolean;
};
type Props = {
  clientId: string;
  name: string;
  draft: ShownDraft;
  busy: boolean;
  act: (body: Record<string, unknown>) => void;
  close?: (() => void) | undefined;
};

/** What taking the step would do, said before it is done. */
export function DraftDoes({ draft }: { draft: ShownDraft }) {
  return (
    <ul className={styles.does}>
      {draft.does.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

/** The words to the client, and the one button that does it all. */
export function StepDraftForm({ clientId, name, draft, busy, act, close }: Props) {
  const router = useRouter();
  const [problem, setProblem] = useState('');
  const take = useRef<HTMLButtonElement>(null);
  const opened = close !== undefined;
  useEffect(() => {
    if (opened) take.current?.focus();
  }, [opened]);

  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const words = new FormData(event.currentTarget).get('draft-words') ?? '';
    act({ act: 'take', draft: { reasonId: draft.reasonId, planVersion: draft.planVersion, words } });
  }
  async function openInPlan() {
    const answer = await postJson(`/api/clients/${clientId}/step-draft`, { reasonId: draft.reasonId });
    if (answer.ok) router.push(textIn(answer.value, 'address'));
    else setProblem(answer.message);
  }
  return (
    <form className={styles.form} onSubmit={send} onKeyDown={(event) => event.key === 'Escape' && close?.()}>
      <label className={styles.words}>
        To {name}; empty: nothing is said
        <textarea name="draft-words" rows={7} defaultValue={draft.words} />
      </label>
      <div className={styles.acts}>
        <button ref={take} type="submit" data-filled disabled={busy}>
          Take it
        </button>
        {draft.opensInPlan && (
          <button type="button" onClick={openInPlan} disabled={busy}>
            Open it in the plan first
          </button>
        )}
        {close && (
          <button type="button" onClick={close}>
            Cancel (Esc)
          </button>
        )}
      </div>
      <p role="status">{problem}</p>
    </form>
  );
}
