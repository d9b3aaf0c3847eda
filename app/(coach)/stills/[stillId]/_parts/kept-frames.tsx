import Link from 'next/link';
import type { KeptStill } from '#lib/balance/kept-still.ts';
import { keptFigures } from '#lib/views/still/since-before.ts';
import forms from '../../../clients/_parts/forms.module.css';
import styles from './still.module.css';

export type Frame = Omit<KeptStill, 'at'> & { at: string; date: string };

/** Placings that were kept, newest first: the same figures over time. */
export function KeptFrames({ frames }: { frames: readonly Frame[] }) {
  if (frames.length === 0) return null;
  const figures = keptFigures(frames);
  return (
    <table className={`${forms.rows} ${styles.figures}`}>
      <caption>Kept before, each against the one below it</caption>
      <thead>
        <tr>
          <th scope="col">Day</th>
          {figures[0]?.map(({ name }) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {frames.map((frame, at) => (
          <tr key={frame.id}>
            <td>
              <Link href={`/stills/${frame.stillId}?frame=${frame.id}`}>{frame.date}</Link>
            </td>
            {figures[at]?.map(({ name, told, since }) => (
              <td key={name}>
                {told}
                {since && <span className={styles.since}>{since}</span>}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
