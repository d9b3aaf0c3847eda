import Link from 'next/link';
import { notFound } from 'next/navigation';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { checksAddress } from '#lib/schemas/settings.ts';
import { loadChecks } from '#lib/usecases/load-checks.ts';
import forms from '../clients/_parts/forms.module.css';
import styles from './_parts/checks.module.css';
import { ChecksForm } from './_parts/checks-form.tsx';
import { Saved } from './_parts/saved.tsx';
import { ScopeForm } from './_parts/scope-form.tsx';
import { Versions } from './_parts/versions.tsx';

export const metadata = { title: 'Checks' };

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> };

/** Every number that decides, for the team or for one client, tried on past nights before it is saved. */
export default async function ChecksPage({ searchParams }: Props) {
  const actor = await requireActor('see-checks');
  const address = checksAddress.parse(await searchParams);
  const page = await loadChecks(actor, address, now());
  if (!page) notFound();
  const { client, groups, opened, clients, ownNumbers, versions } = page;
  const mayEdit = may(actor.role, client ? 'edit-clients' : 'manage-team');
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>Checks</h1>
      <p className={forms.lead}>
        What each check asks, and the numbers it goes by{client ? ` for ${client.name}` : ''}. Most are common
        practice of the trade or our own choice, not research; each says which. They tell a coach where to
        look. None of them predicts injury.
      </p>
      <ScopeForm clients={clients} clientId={client?.id ?? ''} />
      {ownNumbers.length > 0 && (
        <p className={styles.own}>
          Numbers of their own:{' '}
          {ownNumbers.map(({ clientId, name }, index) => (
            <span key={clientId}>
              {index > 0 && ', '}
              <Link href={`/checks?client=${clientId}`}>{name}</Link>
            </span>
          ))}
        </p>
      )}
      {mayEdit && address.saved !== undefined && address.saved === page.version && (
        <Saved clientId={client?.id ?? null} version={page.version} before={page.before} />
      )}
      {opened !== null && (
        <p className={styles.own}>
          The fields hold the numbers of version {opened}, which are not in force.{' '}
          <Link href={client ? `/checks?client=${client.id}` : '/checks'}>Back to those in force</Link>
        </p>
      )}
      {!mayEdit && (
        <p className={styles.own}>
          {client ? 'Coaches change the numbers of a client.' : 'Leads change the numbers of the team.'} You
          can read them.
        </p>
      )}
      <ChecksForm
        key={`${client?.id} ${page.version} ${opened}`}
        client={client}
        groups={groups}
        version={page.version}
        inForce={page.changed}
        mayEdit={mayEdit}
        mayReplay={may(actor.role, 'edit-clients')}
      />
      <Versions versions={versions} />
    </main>
  );
}
