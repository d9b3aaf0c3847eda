'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { postJson } from '../../clients/_parts/post-json.ts';
import { KeptForm } from './kept-form.tsx';
import styles from './replies.module.css';

type Props = {
  reply: { id: string; name: string; text: string; by: string };
  retired: boolean;
  canKeep: boolean;
};

/** One kept reply: read, changed, retired; a retired one stays in its place with the way back until the page is left. */
export function KeptReplyItem({ reply, retired, canKeep }: Props) {
  const { id, name, text, by } = reply;
  const router = useRouter();
  const [editing, setEditing] = useState(false);
  const [out, setOut] = useState(retired);
  const [problem, setProblem] = useState('');
  async function retire(next: boolean) {
    const answer = await postJson(`/api/replies/kept/${id}/retire`, { retired: next });
    setProblem(answer.ok ? '' : answer.message);
    if (!answer.ok) return;
    setOut(next);
    // One that was retired here stays where it was, with its undo; one taken back goes to the others.
    if (retired) router.refresh();
  }
  return (
    <li>
      <h3>{name}</h3>
      {editing ? (
        <KeptForm start={{ id, name, text }} close={() => setEditing(false)} />
      ) : (
        <p className={styles.keptText}>{text}</p>
      )}
      <p className={styles.who}>
        <span>kept by {by}</span>
        {canKeep && !editing && !out && (
          <button type="button" aria-label={`Change: “${name}”`} onClick={() => setEditing(true)}>
            Change
          </button>
        )}
        {canKeep && !editing && !out && (
          <button type="button" aria-label={`Retire: “${name}”`} onClick={() => retire(true)}>
            Retire
          </button>
        )}
        {canKeep && out && (
          <button
            type="button"
            aria-label={`${retired ? 'Take back' : 'Undo'}: “${name}”`}
            onClick={() => retire(false)}
          >
            {retired ? 'Take back' : 'Undo'}
          </button>
        )}
        <span role="status">{problem || (out && !retired ? 'Retired.' : '')}</span>
      </p>
    </li>
  );
}
