import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadNights, type NightLine } from '#lib/usecases/load-nights.ts';
import styles from './nights.module.css';
import { RunNights } from './run-nights.tsx';

export const metadata = { title: 'Nights' };

/** Each run: when, clients, failures with a reason and a retry, time taken; and what is owed now. */
export default async function NightsPage() {
  const actor = await requireActor('see-nights');
  const { lines, owed, givenUp } = await loadNights(actor.scope, now());
  return (
    <main id="main" className={styles.page}>
      <h1>Nights</h1>
      <p className={styles.owed}>
        {owed.nights === 0
          ? 'No night is owed: all that are due have run, up to the last complete day of each client.'
          : `${counted(owed.nights, 'night')} of ${counted(owed.clients, 'client')} owed and not run yet.`}
      </p>
      {givenUp > 0 && (
        <p className={styles.owed}>
          {counted(givenUp, 'night')} of one client failed five times and {givenUp === 1 ? 'waits' : 'wait'}{' '}
          for you, below.
        </p>
      )}
      {owed.nights > 0 && <RunNights label="Run what is owed now" />}
      {lines.length === 0 ? (
        <p>No night has run yet. The first one runs after 03:00 in the zone of each client.</p>
      ) : (
        <table className={styles.runs}>
          <thead>
            <tr>
              <th scope="col">Date</th>
              <th scope="col">Started (UTC)</th>
              <th scope="col">Minutes</th>
              <th scope="col">Clients checked</th>
              <th scope="col">Failed</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => (
              <Line key={line.kind === 'run' ? line.localDate : line.from} line={line} />
            ))}
          </tbody>
        </table>
      )}
    </main>
  );
}

function Line({ line }: { line: NightLine }) {
  if (line.kind === 'gap') {
    return (
      <tr>
        <td colSpan={5}>
          {line.from} to {line.to}: {counted(line.nights, 'night')} not run and too long ago to be caught up.
          The checks of later nights read those days too.
        </td>
      </tr>
    );
  }
  return (
    <tr>
      <th scope="row">{line.localDate}</th>
      <td>{line.startedAt.slice(0, 16).replace('T', ' ')}</td>
      <td>{line.minutes === 0 ? 'under 1' : (line.minutes ?? 'running')}</td>
      <td>
        {line.done} of {line.due}
      </td>
      <td>
        {line.failed.length === 0 && 'none'}
        {line.failed.map((client) => (
          <p key={client.clientId}>
            <b>{client.name}</b>: {client.words}. <RunNights label="Run again" clientId={client.clientId} />
          </p>
        ))}
      </td>
    </tr>
  );
}

function counted(count: number, thing: string): string {
  return `${count} ${thing}${count === 1 ? '' : 's'}`;
}
