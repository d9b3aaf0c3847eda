'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import styles from './nights.module.css';

/** Asks the worker for the owed nights of the team, or for one client again. */
export function RunNights({ label, clientId }: { label: string; clientId?: string }) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  const run = async () => {
    setSaid('asking the worker');
    const answer = await fetch('/api/nights/run', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(clientId ? { clientId } : {}),
    }).catch(() => undefined);
    setSaid(
      answer?.ok ? 'the worker has it' : 'not run: the queue cannot be reached. What is owed stays owed.',
    );
    router.refresh();
  };
  return (
    <span className={styles.run}>
      <button type="button" data-outlined onClick={run}>
        {label}
      </button>
      <span role="status">{said}</span>
    </span>
  );
}
