import Link from 'next/link';
import type { KeptStill } from '#lib/balance/kept-still.ts';
import { readStill } from '#lib/balance/read-still.ts';
import { FIRST_SPREAD, sameSpread, spreadOfPlacings, stillErrors } from '#lib/balance/still-errors.ts';
import { stillLines } from '#lib/views/still/still-lines.ts';
import forms from '../../../clients/_parts/forms.module.css';
import styles from './still.module.css';

export type Frame = Omit<KeptStill, 'at'> & { at: string; date: string };

const SHOWN = ['centre of mass over the hand', 'shoulder', 'hip'];

/** Placings that were kept, newest first: the same figures over time. */
export function KeptFrames({ frames }: { frames: readonly Frame[] }) {
  if (frames.length === 0) return null;
  return (
    <table className={`${forms.rows} ${styles.figures}`}>
      <caption>Kept before</caption>
      <thead>
        <tr>
          <th scope="col">Day</th>
          {SHOWN.map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {frames.map((frame) => (
          <tr key={frame.id}>
            <td>
              <Link href={`/stills/${frame.stillId}?frame=${frame.id}`}>{frame.date}</Link>
            </td>
            {figuresOf(frame).map(([name, told]) => (
              <td key={name}>{told}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function figuresOf(frame: Frame): [name: string, told: string][] {
  const still = { ...frame, placed: frame.second ?? frame.placed };
  const spread = frame.second ? spreadOfPlacings(frame.placed, frame.second) : sameSpread(FIRST_SPREAD);
  const [reading, errors] = [readStill(still), stillErrors(still, spread)];
  const lines = reading && errors ? stillLines(reading, errors, null) : [];
  return SHOWN.map((name) => {
    const line = lines.find((one) => one.name === name);
    return [name, line ? `${line.value} ${line.error}` : 'not known'];
  });
}
