import Link from 'next/link';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadClients } from '#lib/usecases/load-clients.ts';
import { clientListRow } from '#lib/views/client-list.ts';
import styles from './_parts/forms.module.css';

export const metadata = { title: 'Clients' };

export default async function ClientsPage({
  searchParams,
}: {
  searchParams: Promise<{ text?: string | string[] }>;
}) {
  const actor = await requireActor('see-clients');
  const { text } = await searchParams;
  const asked = typeof text === 'string' ? text : '';
  const clients = (await loadClients(actor, { text: asked })).map((row) => clientListRow(row, now()));
  return (
    <main id="main" tabIndex={-1} className={styles.page}>
      <h1>Clients</h1>
      <div className={styles.acts}>
        <search>
          <form className={styles.acts}>
            <label htmlFor="text">Name</label>
            <input id="text" name="text" type="search" defaultValue={asked} style={{ width: 240 }} />
            <button type="submit" className={styles.other}>
              Find
            </button>
          </form>
        </search>
        {may(actor.role, 'edit-clients') && (
          <>
            <Link href="/clients/new" className={styles.main}>
              New client
            </Link>
            <Link href="/clients/import" className={styles.other}>
              Import a list
            </Link>
            <Link href="/clients/take-in" className={styles.other}>
              Take a client in
            </Link>
          </>
        )}
      </div>
      {clients.length === 0 ? (
        <p className={styles.lead}>
          {asked
            ? `No client’s name contains “${asked}”.`
            : 'The people you coach will stand here. Make the first one.'}
        </p>
      ) : (
        <table className={styles.rows}>
          <thead>
            <tr>
              <th scope="col">Name</th>
              <th scope="col">Standing</th>
              <th scope="col">Last check-in</th>
              <th scope="col">Reasons open</th>
            </tr>
          </thead>
          <tbody>
            {clients.map((client) => (
              <tr key={client.id}>
                <td>
                  <Link href={`/clients/${client.id}`} className={styles.name}>
                    {client.name}
                  </Link>
                </td>
                <td>{client.standing}</td>
                <td title={client.lastExact}>{client.last}</td>
                <td>{client.reasons}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </main>
  );
}
