import { impossibleJoints } from '#lib/balance/impossible-joints.ts';
import type { Still, StillReading } from '#lib/balance/read-still.ts';
import { type PlacingSpread, stillErrors } from '#lib/balance/still-errors.ts';
import { impossibleInWords, stillLines } from '#lib/views/still/still-lines.ts';
import forms from '../../../clients/_parts/forms.module.css';
import styles from './still.module.css';

type Props = { still: Still; spread: PlacingSpread; reading: StillReading | undefined };

/** What the points say, each with its error; or why they say nothing. */
export function Figures({ still, spread, reading }: Props) {
  const errors = stillErrors(still, spread);
  if (!reading || !errors)
    return <p role="status">Nothing can be said yet: the plumb line, the hand or the scale has no length.</p>;
  const impossible = impossibleInWords(impossibleJoints(still.placed));
  const lines = stillLines(reading, errors, still.scale.by === 'stature' ? still.scale.metres : null);
  return (
    <>
      {impossible && (
        <p role="alert" className={forms.refusal}>
          {impossible}
        </p>
      )}
      <table className={`${forms.rows} ${styles.figures}`}>
        <caption>What the points say</caption>
        <thead>
          <tr>
            <th scope="col">Figure</th>
            <th scope="col">Value</th>
            <th scope="col">Error of placing</th>
            <th scope="col">What it is</th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ name, value, error, means }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{value}</td>
              <td>{error}</td>
              <td>{means}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className={styles.note}>
        The picture was turned by {Math.abs(reading.tilt).toFixed(1)}° to hang straight. One degree of tilt
        moves the centre of mass by some 16 mm, a twelfth of a hand.
      </p>
    </>
  );
}
