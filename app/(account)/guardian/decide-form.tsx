import type { GuardianPage } from '#lib/usecases/guardians/load-guardian.ts';
import styles from '../account.module.css';

/** Plain forms: they work without scripts. */
export function DecideForm({ page }: { page: GuardianPage }) {
  const version = <input type="hidden" name="version" value={page.version} />;
  return (
    <>
      <h2>Your word</h2>
      <form action="/api/guardians/decide" method="post">
        {version}
        <input type="hidden" name="decision" value="agree" />
        <p>
          <label className={styles.tick}>
            <input type="checkbox" name="share" defaultChecked={page.share.given} /> {page.share.words} You
            can leave this out.
          </label>
        </p>
        <p>
          <button type="submit" className={styles.act}>
            I am the parent or guardian of {page.client}, and I agree
          </button>
        </p>
      </form>
      {page.state === 'declined' ? null : (
        <form action="/api/guardians/decide" method="post">
          {version}
          <input type="hidden" name="decision" value="decline" />
          <p>
            <button type="submit" className={styles.quiet}>
              I do not agree
            </button>
          </p>
        </form>
      )}
      <p>Text of version {page.version}. The time is kept with your word.</p>
    </>
  );
}
