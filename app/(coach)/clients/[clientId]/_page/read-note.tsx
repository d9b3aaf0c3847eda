'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { postJson } from '../../_parts/post-json.ts';
import styles from './team-news.module.css';

/** The note that came with a client, until it is marked as read. */
export function ReadNote({ moveId, words }: { moveId: string; words: string }) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  async function read() {
    const answer = await postJson(`/api/team/moves/${moveId}/read`, {});
    if (answer.ok) router.refresh();
    else setSaid(answer.message);
  }
  return (
    <p className={styles.note}>
      <span dir="auto">{words}</span>{' '}
      <button type="button" onClick={() => void read()}>
        Mark as read
      </button>{' '}
      <span role="status">{said}</span>
    </p>
  );
}
