import Link from 'next/link';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { nightsPage } from '#lib/schemas/nights.ts';
import { loadNights } from '#lib/usecases/load-nights.ts';
import styles from './nights.module.css';
import { Owed } from './owed.tsx';
import { RunClient } from './run-client.tsx';
import { RunNights } from './run-nights.tsx';
import { Runs } from './runs.tsx';
import { SaidLast } from './said.tsx';

export const metadata = { title: 'Nights' };

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> };

/** Each run: when, clients, failures with a reason and a retry, time taken; what is owed now, and what is stuck. */
export default async function NightsPage({ searchParams }: Props) {
  const actor = await requireActor('see-nights');
  const { before } = nightsPage.parse(await searchParams);
  const view = await loadNights(actor, before ?? null, now());
  const canRun = may(actor.role, 'run-nights');
  return (
    <main id="main" className={styles.page}>
      <h1>Nights</h1>
      <SaidLast>
        <Owed view={view} canRun={canRun} />
        {canRun && view.clients.length > 0 && (
          <section className={styles.now} aria-labelledby="run-now">
            <h2 id="run-now">Check again now</h2>
            <p>
              The checks run by themselves at 03:00 where each client lives. After a correction or new numbers
              they can be run at once; nothing is doubled.
            </p>
            <RunClient clients={view.clients} />
            <RunNights label="Check everybody again" about="Everybody" ask={{ everybody: true }} />
          </section>
        )}
        {view.lines.length === 0 ? (
          <p>No night has run yet. The first one runs after 03:00 in the zone of each client.</p>
        ) : (
          <Runs lines={view.lines} canRun={canRun} />
        )}
      </SaidLast>
      <p className={styles.pages}>
        {before && <Link href="/nights">Newest nights</Link>}
        {view.older && <Link href={`/nights?before=${view.older}`}>Older nights</Link>}
      </p>
    </main>
  );
}
