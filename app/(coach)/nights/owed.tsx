import Link from 'next/link';
import type { NightsView } from '#lib/usecases/load-nights.ts';
import styles from './nights.module.css';
import { RunNights } from './run-nights.tsx';
import { Stuck } from './stuck.tsx';

/** What needs a person: nights that are owed or given up, mornings with too much, what does not leave. */
export function Owed({ view, canRun }: { view: NightsView; canRun: boolean }) {
  const { owed, givenUp, overMornings } = view;
  return (
    <div className={styles.owed}>
      {view.unfinishedAtSix && (
        <p className={styles.alarm}>
          <b>Not finished at 06:00 where the clients live:</b> {view.unfinishedAtSix}. What stood on the board
          before still stands; these clients were not looked at since.
        </p>
      )}
      <p>
        {owed.nights === 0
          ? 'No night is owed: all that are due have run, up to the last complete day of each client.'
          : `${counted(owed.nights, 'night')} of ${counted(owed.clients, 'client')} owed and not run yet, the oldest of ${owed.oldest}.`}
      </p>
      {givenUp > 0 && (
        <p>
          {counted(givenUp, 'night')} of one client failed five times and {givenUp === 1 ? 'waits' : 'wait'}{' '}
          for you, below.
        </p>
      )}
      {canRun && (owed.nights > 0 || givenUp > 0) && (
        <RunNights label="Run all that is owed or failed now" about="All that was owed or failed" ask={{}} />
      )}
      {overMornings > 0 && (
        <p>
          <b>
            {overMornings === 1 ? 'On one morning' : `On ${overMornings} mornings`} below more new rows came
            than a coach can answer
          </b>{' '}
          (more than 20 for every 120 clients, outside now and today). That is a fault of the checks, not of
          the clients: see their numbers under <Link href="/checks">Checks</Link>.
        </p>
      )}
      <Stuck view={view} canTry={canRun} />
    </div>
  );
}

function counted(count: number, thing: string): string {
  return `${count} ${thing}${count === 1 ? '' : 's'}`;
}
