import Link from 'next/link';
import { Mark } from '#app/_ui/marks.tsx';
import type { ClientPage } from '#lib/views/client-page.ts';
import styles from './client-page.module.css';
import { Said } from './said.tsx';

type Props = {
  page: ClientPage;
  /** What of the start waits. */
  waits: string;
  saved: string | undefined;
  mayExport: boolean;
  mayEdit: boolean;
};

/** Who this is, how they are in two sentences, why they are on the board, and the step proposed. */
export function Head({ page, waits, saved, mayExport, mayEdit }: Props) {
  const { reasons } = page;
  return (
    <div className={styles.top}>
      <div className={styles.who}>
        {saved ? <p role="status">Plan version {saved} is saved.</p> : null}
        <h1>{page.name}</h1>
        <p className={styles.about}>{page.about}</p>
        <p className={styles.headline}>
          <Said text={page.headline.join(' ')} />
        </p>
        {waits ? (
          <p className={styles.about}>
            {waits} <Link href={`/clients/${page.id}/intake`}>The start</Link>
          </p>
        ) : null}
        {reasons.lines.length > 0 ? (
          <ul className={styles.reasons} aria-label="Reasons">
            {reasons.lines.map((reason) => (
              <li key={reason.id}>
                {reason.tier ? <Mark tier={reason.tier} /> : <span />}
                <span className={styles.said}>
                  <Said text={reason.sentence} />
                </span>
                <span className={styles.since} title={reason.sinceExact}>
                  since {reason.since}
                  {reason.state ? `, ${reason.state}` : ''}
                </span>
                <Link
                  href={`/clients/${page.id}/reasons/${reason.id}`}
                  aria-label={`Working of: ${reason.kind}`}
                >
                  Working
                </Link>
              </li>
            ))}
          </ul>
        ) : null}
      </div>
      <aside className={styles.todo} aria-label="What to do">
        {reasons.step ? (
          <>
            <h2>Proposed next step</h2>
            <p className={styles.step}>{reasons.step}</p>
            <div className={styles.acts}>
              <Link className="button" data-outlined href={`/?text=${encodeURIComponent(page.name)}`}>
                Take or put aside on the board
              </Link>
            </div>
          </>
        ) : (
          <p className={styles.small}>No step is proposed.</p>
        )}
        {page.startsAnew ? (
          <p className={styles.small}>
            Away for twelve weeks or more: starts as new, the history is kept.{' '}
            <Link href={`/clients/${page.id}/start`}>Ask start tests and place afresh</Link>
          </p>
        ) : null}
        <div className={styles.acts}>
          <Link href={`/clients/${page.id}/plan`}>{page.plan ? 'Change the plan' : 'Write the plan'}</Link>
          <Link href={`/clients/${page.id}/start`}>Start tests</Link>
          {mayExport && (
            <>
              <Link href={`/clients/${page.id}/handover`}>Hand over</Link>
              <a href={`/api/clients/${page.id}/export`} download>
                Export the record
              </a>
            </>
          )}
          {mayEdit && <Link href={`/clients/${page.id}/log`}>Bring in an old log</Link>}
          <Link href={`/clients/${page.id}/intake`}>What was told at the start</Link>
          <Link href={`/clients/${page.id}/rights`}>Consent and record</Link>
        </div>
      </aside>
    </div>
  );
}
