import Link from 'next/link';
import type { LimitLine } from '#lib/views/limit-lines.ts';
import { EndLimit } from './end-limit.tsx';
import { LimitForm } from './limit-form.tsx';
import styles from './limits.module.css';

type Props = { clientId: string; today: string; limits: LimitLine[] };

/** What is ruled out or reduced for this client, and the forms that set and end it. */
export function Limits({ clientId, today, limits }: Props) {
  const standing = limits.filter((limit) => limit.state !== 'over');
  const over = limits.filter((limit) => limit.state === 'over');
  return (
    <section aria-label="Limits" className={styles.limits}>
      <h3>Limits</h3>
      {standing.length === 0 ? <p>Nothing is ruled out or reduced.</p> : null}
      <ul>
        {standing.map((limit) => (
          <li key={limit.id}>
            <strong>{limit.what}</strong> {limit.when}
            {limit.state === 'to come' ? ' (not yet in force)' : ''}.
            {limit.words ? <span className={styles.words}> “{limit.words}”</span> : null}
            {limit.touches.length > 0 ? <span> In the plan: {limit.touches.join('; ')}.</span> : null}
            {limit.told ? (
              <Link href={`/clients/${clientId}/intake`}>Record a clinician’s word</Link>
            ) : (
              <EndLimit clientId={clientId} limitId={limit.id} what={limit.what} />
            )}
          </li>
        ))}
      </ul>
      <details>
        <summary>Set a limit</summary>
        <LimitForm clientId={clientId} today={today} />
      </details>
      {over.length > 0 ? (
        <details>
          <summary>Limits that are over: {over.length}</summary>
          <ul>
            {over.map((limit) => (
              <li key={limit.id}>
                {limit.what} {limit.when}
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </section>
  );
}
