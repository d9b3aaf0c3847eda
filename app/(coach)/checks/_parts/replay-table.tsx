import Link from 'next/link';
import type { ReplayLine } from '#lib/views/replay-words.ts';
import styles from './checks.module.css';

/** Shown at once; the rest behind a fold. */
const SHOWN = 40;

/** Who would have had what, and when. */
export function ReplayTable({ lines }: { lines: readonly ReplayLine[] }) {
  if (lines.length === 0) return null;
  const rest = lines.slice(SHOWN);
  return (
    <>
      <Rows lines={lines.slice(0, SHOWN)} />
      {rest.length > 0 && (
        <details>
          <summary>{rest.length} more</summary>
          <Rows lines={rest} />
        </details>
      )}
    </>
  );
}

function Rows({ lines }: { lines: readonly ReplayLine[] }) {
  return (
    <table className={styles.replay}>
      <thead>
        <tr>
          <th scope="col">Client</th>
          <th scope="col">Reason</th>
          <th scope="col">Came</th>
          <th scope="col">Would come</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.key} title={line.exact}>
            <th scope="row">
              <Link href={`/clients/${line.clientId}`}>{line.name}</Link>
            </th>
            <td>{line.reason}</td>
            <td>{line.was}</td>
            <td>
              <b>{line.is}</b>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
