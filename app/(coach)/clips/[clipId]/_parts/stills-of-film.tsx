import Link from 'next/link';
import styles from './looking.module.css';

type Props = { stills: { id: string; moment: string }[] };

/** Stills that were taken from this film, each opens to its joints. */
export function StillsOfFilm({ stills }: Props) {
  if (stills.length === 0) return null;
  return (
    <section aria-labelledby="stills-head">
      <h2 id="stills-head">Stills of this film</h2>
      <ul className={styles.stills}>
        {stills.map(({ id, moment }) => (
          <li key={id}>
            <Link href={`/stills/${id}`}>
              {/* biome-ignore lint/performance/noImgElement: pictures are drawn by ourselves */}
              <img src={`/api/stills/${id}`} alt={`Still at ${moment}`} height={120} />
              {moment}
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
