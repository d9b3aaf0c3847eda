'use client';

import { useRouter } from 'next/navigation';
import styles from './nights.module.css';
import { useSaid } from './said.tsx';

/** Hands what waits to the worker at once, and says what became of it. */
export function TryAgain({ kind }: { kind: string }) {
  const router = useRouter();
  const [said, say] = useSaid('What was stuck');
  const send = async () => {
    say('asking the worker');
    const answer = await fetch('/api/nights/outbox', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ kind }),
    }).catch(() => undefined);
    const told = await answer?.json().catch(() => undefined);
    if (!answer) say('not tried: no connection. What waits stays.');
    else if (answer.ok) say('the worker tries it now; look again in a minute.');
    else say(told?.error?.message ?? 'not tried. What waits stays.');
    router.refresh();
  };
  return (
    <span className={styles.run}>
      <button type="button" data-outlined onClick={send}>
        Try again now
      </button>
      <span role="status">{said}</span>
    </span>
  );
}
