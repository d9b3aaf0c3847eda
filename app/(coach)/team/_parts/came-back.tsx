import Link from 'next/link';
import type { ApprovalShown } from '#lib/usecases/team/load-approvals.ts';
import styles from './team.module.css';

/** What came back to who prepared it, or was overtaken, with why. Nothing when nothing did. */
export function CameBack({ decided }: { decided: ApprovalShown[] }) {
  if (decided.length === 0) return null;
  return (
    <section aria-labelledby="came-back">
      <h2 id="came-back">Came back to you in the last 14 days</h2>
      <ul className={styles.list}>
        {decided.map((one) => (
          <li key={one.id}>
            <span className={styles.words}>
              {one.title} for <Link href={`/clients/${one.clientId}`}>{one.client}</Link>,{' '}
              {one.state === 'sent-back' ? (
                <>
                  sent back by {one.decidedBy}: <q>{one.said}</q>
                </>
              ) : (
                `overtaken, nothing was done: ${one.said}`
              )}
              {one.words && <blockquote dir="auto">{one.words}</blockquote>}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
