import Link from 'next/link';
import type { VersionLine } from '#lib/usecases/load-checks.ts';
import styles from './checks.module.css';

/** Every version of the team's and of clients' numbers, newest first. */
export function Versions({ versions }: { versions: readonly VersionLine[] }) {
  return (
    <section className={styles.group} aria-labelledby="versions">
      <h2 id="versions">Versions</h2>
      {versions.length === 0 ? (
        <p className={styles.hint}>
          Nobody has changed a number yet: the defaults are in force. Each change will stand here with who,
          when and why.
        </p>
      ) : (
        <ol className={styles.versions}>
          {versions.map((one) => (
            <li key={one.version}>
              <p>
                <b>{one.version}</b> for {one.scope}, by {one.by}, {one.at}: {one.why}
              </p>
              <ul>
                {one.changes.map((change) => (
                  <li key={change}>{change}</li>
                ))}
              </ul>
              <Link href={`/checks?${one.clientId ? `client=${one.clientId}&` : ''}version=${one.version}`}>
                Put these numbers into the fields
              </Link>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
