'use client';
import { useEffect, useRef, useState } from 'react';
import { postJson, textIn } from '../../clients/_parts/post-json.ts';
import styles from '../_parts/replies.module.css';

/** What was sent, with its undo for as long as the page stays; after it, who had read it already. */
export function SentWords({ actId, line }: { actId: string; line: string }) {
  const self = useRef<HTMLParagraphElement>(null);
  const [undone, setUndone] = useState('');
  const [problem, setProblem] = useState('');
  useEffect(() => self.current?.focus(), []);
  async function undo() {
    const answer = await postJson('/api/board/acts', { act: 'undo', actId });
    if (answer.ok) setUndone(textIn(answer.value, 'line') || 'Taken back.');
    else setProblem(answer.message);
  }
  return (
    <p ref={self} tabIndex={-1} className={styles.acted}>
      <span role="status">{problem || undone || line}</span>
      {undone === '' && (
        <button type="button" data-undo={actId} onClick={undo}>
          Undo
        </button>
      )}
    </p>
  );
}
