import type { NightsView } from '#lib/usecases/load-nights.ts';
import styles from './nights.module.css';
import { TryAgain } from './try-again.tsx';

/** What waits in the outbox longer than it should, and what is not tried any more. */
export function Stuck({ view, canTry }: { view: NightsView; canTry: boolean }) {
  return (
    <>
      {view.stuck.map(({ kind, words }) => (
        <div key={kind} className={styles.stuck}>
          <p>
            <b>Stuck:</b> {words}{' '}
            {kind === 'mail' && view.mailsWait
              ? 'No mail server is set, so mails only wait: whoever runs this server sets PLUMBLINE_MAIL_SERVER.'
              : 'It is tried again by itself.'}
          </p>
          {canTry && !(kind === 'mail' && view.mailsWait) && <TryAgain kind={kind} />}
        </div>
      ))}
      {view.notLeft.map((words) => (
        <p key={words}>
          <b>Not tried any more:</b> {words}
        </p>
      ))}
    </>
  );
}
