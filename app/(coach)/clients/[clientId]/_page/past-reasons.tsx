import Link from 'next/link';
import { Mark } from '#app/_ui/marks.tsx';
import type { PastReasonLine } from '#lib/views/client-past-reasons.ts';
import { Said } from './said.tsx';
import styles from './steps-tried.module.css';

const SHOWN = 6;

/** Reasons that are closed: when, why, what a coach said of them, what they came to. */
export function PastReasons({ clientId, lines }: { clientId: string; lines: PastReasonLine[] }) {
  const [newest, older] = [lines.slice(0, SHOWN), lines.slice(SHOWN)];
  return (
    <section className={styles.section} aria-labelledby="past-reasons">
      <h2 id="past-reasons">Earlier reasons</h2>
      {lines.length === 0 ? (
        <p>No reason has closed yet. Closed ones stand here with what became of them.</p>
      ) : null}
      <Lines clientId={clientId} lines={newest} />
      {older.length > 0 ? (
        <details>
          <summary>{older.length} more</summary>
          <Lines clientId={clientId} lines={older} />
        </details>
      ) : null}
    </section>
  );
}

function Lines({ clientId, lines }: { clientId: string; lines: PastReasonLine[] }) {
  return (
    <ol className={styles.steps}>
      {lines.map((line) => (
        <li key={line.id}>
          <div className={styles.when}>
            <strong>
              {line.tier ? <Mark tier={line.tier} /> : null} {line.kind}
            </strong>
            <span>{line.when}</span>
          </div>
          <div>
            <p>
              <Said text={line.sentence} />{' '}
              <Link
                href={`/clients/${clientId}/reasons/${line.id}`}
                aria-label={`Working of: ${line.kind}, ${line.when}`}
              >
                Working
              </Link>
            </p>
            {line.outcome ? <p className={styles.what}>{line.outcome}</p> : null}
            {line.verdict ? <p className={styles.changes}>{line.verdict}</p> : null}
          </div>
        </li>
      ))}
    </ol>
  );
}
