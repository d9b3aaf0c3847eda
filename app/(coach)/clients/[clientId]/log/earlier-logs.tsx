'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { exactDate } from '#lib/views/say-date.ts';
import forms from '../../_parts/forms.module.css';
import { postJson } from '../../_parts/post-json.ts';
import styles from './log.module.css';

type Log = {
  id: string;
  by: string;
  days: number;
  sets: number;
  from: string;
  to: string;
  at: string;
  undoneAt: Date | null;
  mayUndo: boolean;
};

/** What came in so far; the newest can be taken back within a day. */
export function EarlierLogs({ clientId, logs }: { clientId: string; logs: Log[] }) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  const [busy, setBusy] = useState(false);
  if (logs.length === 0) return null;
  async function undo(importId: string) {
    setBusy(true);
    const answer = await postJson(`/api/clients/${clientId}/log`, { do: 'undo', importId });
    setBusy(false);
    setSaid(answer.ok ? takenBack(answer.value) : answer.message);
    router.refresh();
  }
  return (
    <section aria-labelledby="logs-so-far">
      <h2 id="logs-so-far">Logs that came in</h2>
      <ul className={styles.logs}>
        {logs.map((log) => (
          <li key={log.id}>
            <span>
              {exactDate(log.from)} to {exactDate(log.to)}: {log.days} {log.days === 1 ? 'day' : 'days'},{' '}
              {log.sets} sets, by {log.by} on {exactDate(log.at.slice(0, 10))}
              {log.undoneAt ? '; taken back' : ''}
            </span>
            {log.mayUndo && (
              <button type="button" className={forms.plain} disabled={busy} onClick={() => undo(log.id)}>
                Take it back
              </button>
            )}
          </li>
        ))}
      </ul>
      <p role="status">{said}</p>
    </section>
  );
}

function takenBack(value: unknown): string {
  const { days = 0, stayed = 0 } = (value ?? {}) as { days?: number; stayed?: number };
  const kept = stayed > 0 ? ` ${stayed} stay: they were corrected, answered or marked since.` : '';
  return `${days} ${days === 1 ? 'day is' : 'days are'} taken back.${kept}`;
}
