'use client';

import type { CheckedLog } from '#lib/usecases/import/log/import-log.ts';
import { exactDate } from '#lib/views/say-date.ts';
import forms from '../../_parts/forms.module.css';
import styles from './log.module.css';

type Props = { found: CheckedLog; name: string; busy: boolean; take: () => void };

const SHOWN = 60;

/** Every day that would come in, or every cell that stands in the way. */
export function FoundDays({ found, name, busy, take }: Props) {
  const { days, sets, there, problems, faulty } = found;
  if (faulty > 0)
    return (
      <section aria-labelledby="log-faults">
        <h2 id="log-faults">
          {faulty === 1 ? '1 cell cannot be read' : `${faulty} cells cannot be read`}: nothing would be taken
        </h2>
        <p className={styles.note}>
          Mend the list and choose it again, or say above that a column is not read.
          {faulty > problems.length ? ` The first ${problems.length}:` : ''}
        </p>
        <ul className={styles.faults}>
          {problems.map(({ line, column, message }) => (
            <li key={`${line} ${column} ${message}`}>
              <b>Line {line}</b> {column}: {message}
            </li>
          ))}
        </ul>
      </section>
    );
  return (
    <section aria-labelledby="log-days">
      <h2 id="log-days">
        {days.length === 1 ? '1 day' : `${days.length} days`} with {sets} sets would come in
      </h2>
      {there.length > 0 && (
        <p className={styles.note}>
          {there.length === 1 ? '1 day has' : `${there.length} days have`} a check-in already and{' '}
          {there.length === 1 ? 'stays' : 'stay'} as {there.length === 1 ? 'it is' : 'they are'}:{' '}
          {there.slice(0, 5).map(exactDate).join(', ')}
          {there.length > 5 ? ` and ${there.length - 5} more` : ''}.
        </p>
      )}
      {days.length > 0 && (
        <>
          <div className={forms.acts}>
            <button type="button" className={forms.main} disabled={busy} onClick={take}>
              Take {days.length === 1 ? 'this day' : `these ${days.length} days`} for {name}
            </button>
          </div>
          <table className={forms.rows}>
            <thead>
              <tr>
                <th scope="col">Day</th>
                <th scope="col">Sets</th>
                <th scope="col">Told</th>
              </tr>
            </thead>
            <tbody>
              {days.slice(0, SHOWN).map(({ date, sets: ofDay, told }) => (
                <tr key={date}>
                  <td>{exactDate(date)}</td>
                  <td>{ofDay === 1 ? '1 set' : `${ofDay} sets`}</td>
                  <td className={styles.told}>{told}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {days.length > SHOWN && <p className={styles.note}>{days.length - SHOWN} more days follow.</p>}
        </>
      )}
    </section>
  );
}
