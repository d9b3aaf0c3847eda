import Link from 'next/link';
import { notFound } from 'next/navigation';
import { after } from 'next/server';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { loadStartPage } from '#lib/usecases/intake/load-start-page.ts';
import { noteRead } from '#lib/usecases/rights/note-read.ts';
import forms from '../../_parts/forms.module.css';
import { ChangeForm } from './change-form.tsx';
import { Guardians } from './guardians.tsx';
import { Holds } from './holds.tsx';
import styles from './intake.module.css';

export const metadata = { title: 'The start' };

export default async function StartPage({ params }: { params: Promise<unknown> }) {
  const actor = await requireActor('see-clients');
  const address = clientAddress.safeParse(await params);
  const page = address.success ? await loadStartPage(actor, address.data.clientId, now()) : undefined;
  if (!page) notFound();
  after(() => noteRead(actor, page.id, 'intake', now()));
  const mayEdit = may(actor.role, 'edit-clients');
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>{page.name}: told at the start</h1>
      <p className={forms.lead}>
        <Link href={`/clients/${page.id}`}>Back to the page of {page.name}</Link>
      </p>
      <p className={styles.said}>{page.state}</p>
      <Holds page={page} mayEdit={mayEdit} />
      {page.under18 ? <Guardians page={page} mayInvite={may(actor.role, 'invite-clients')} /> : null}
      <h2>What was told</h2>
      {page.told.length === 0 && page.others.length === 0 ? <p>Nothing was sent yet.</p> : null}
      <dl className={styles.told}>
        {page.told.map(({ step, title, lines }) => (
          <div key={step}>
            <dt>{title}</dt>
            {lines.map((line) => (
              <dd key={line}>{line}</dd>
            ))}
          </div>
        ))}
        {page.others.map(([about, told]) => (
          <div key={about}>
            <dt>{about.replaceAll(/([a-z])([A-Z])/g, '$1 $2')}</dt>
            <dd>{told}</dd>
          </div>
        ))}
      </dl>
      {page.isSent && mayEdit ? <ChangeForm clientId={page.id} name={page.name} /> : null}
      {page.changes.length > 0 ? (
        <>
          <h2>Changed afterwards</h2>
          <ul className={styles.lines}>
            {page.changes.map((change) => (
              <li key={change.key}>
                {change.when}, {change.by}: {change.field}, from {change.before} to {change.after}. Why:{' '}
                {change.why}
              </li>
            ))}
          </ul>
        </>
      ) : null}
      <p className={styles.said}>
        Health words inform you; they do not diagnose. The list of questions is the trade’s and a clinician
        should confirm it. Local rules on who may advise come first.
      </p>
    </main>
  );
}
