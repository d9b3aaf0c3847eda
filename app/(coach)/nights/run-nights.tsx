'use client';

import { useRouter } from 'next/navigation';
import styles from './nights.module.css';
import { useSaid } from './said.tsx';

/** What is run: nothing said, all that is owed. */
type Ask = { clientId?: string; everybody?: true };

/** Asks the worker for nights, and says what became of it. `about`: whose or which nights. */
export function useRun(about: string): { said: string; run: (ask: Ask) => Promise<void> } {
  const router = useRouter();
  const [said, say] = useSaid(about);
  const run = async (ask: Ask) => {
    say('asking the worker');
    const answer = await fetch('/api/nights/run', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(ask),
    }).catch(() => undefined);
    say(await saidOf(answer, ask));
    router.refresh();
  };
  return { said, run };
}

export function RunNights({ label, about, ask }: { label: string; about: string; ask: Ask }) {
  const { said, run } = useRun(about);
  return (
    <span className={styles.run}>
      <button type="button" data-outlined onClick={() => run(ask)}>
        {label}
      </button>
      <span role="status">{said}</span>
    </span>
  );
}

async function saidOf(answer: Response | undefined, ask: Ask): Promise<string> {
  if (!answer) return 'not run: no connection. What is owed stays owed.';
  const told = await answer.json().catch(() => ({}));
  if (!answer.ok)
    return told.error?.message ?? 'not run: the queue cannot be reached. What is owed stays owed.';
  if (ask.clientId) return 'checked as of today; owed nights are with the worker.';
  if (told.clients === 0) return 'nothing is owed.';
  return `the worker has ${told.clients === 1 ? '1 client' : `${told.clients} clients`}.`;
}
