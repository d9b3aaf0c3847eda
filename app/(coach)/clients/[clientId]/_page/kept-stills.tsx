import Link from 'next/link';
import type { ClientStill } from '#lib/usecases/stills/load-client-stills.ts';
import styles from './steps-tried.module.css';

/** Stills in time, with what the joints placed on them say, each against the placing before it. */
export function KeptStills({ stills }: { stills: readonly ClientStill[] }) {
  if (stills.length === 0) return null;
  return (
    <section className={styles.section} aria-labelledby="kept-stills">
      <h2 id="kept-stills">Stills</h2>
      <ol className={styles.steps}>
        {stills.map(({ id, day, from, figures }) => (
          <li key={id}>
            <div className={styles.when}>
              <strong>
                <Link href={`/stills/${id}`}>{day}</Link>
              </strong>
              <span>{from}</span>
            </div>
            <div>
              {figures.length === 0 ? <p>No joints are placed on it yet.</p> : null}
              {figures.map(({ name, told, since }) => (
                <p key={name}>
                  {name} {told}
                  {since ? `; since the one before: ${since}` : ''}
                </p>
              ))}
            </div>
          </li>
        ))}
      </ol>
    </section>
  );
}
