import { notFound } from 'next/navigation';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { loadLogs } from '#lib/usecases/import/log/load-logs.ts';
import forms from '../../_parts/forms.module.css';
import { EarlierLogs } from './earlier-logs.tsx';
import { LogForm } from './log-form.tsx';

export const metadata = { title: 'Old log' };

/** Training written down elsewhere before, looked through before anything is written. */
export default async function LogPage({ params }: { params: Promise<unknown> }) {
  const actor = await requireActor('edit-clients');
  const address = clientAddress.safeParse(await params);
  const loaded = address.success ? await loadLogs(actor, address.data.clientId, now()) : undefined;
  if (!address.success || !loaded) notFound();
  const { clientId } = address.data;
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>Old log of {loaded.name}</h1>
      <p className={forms.lead}>
        Training that was written down before: a list with a day in each row, saved as CSV in UTF-8, parted by
        comma, semicolon or tab. First you say what its columns and drills are, then you see every day it
        would bring. Days with a check-in stay as they are.{' '}
        <a href={`/clients/${clientId}`}>Back to {loaded.name}</a>
      </p>
      <LogForm clientId={clientId} name={loaded.name} />
      <EarlierLogs
        clientId={clientId}
        logs={loaded.logs.map((log) => ({ ...log, at: log.at.toISOString() }))}
      />
    </main>
  );
}
