import Link from 'next/link';
import { notFound } from 'next/navigation';
import { after } from 'next/server';
import { z } from 'zod';
import { TheLine } from '#app/_ui/the-line.tsx';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { loadReason } from '#lib/usecases/load-reason.ts';
import { loadStepDraft } from '#lib/usecases/load-step-draft.ts';
import { noteRead } from '#lib/usecases/rights/note-read.ts';
import { workingView } from '#lib/views/working/working.ts';
import { BesideWorking } from './beside-working.tsx';
import { TakeStep } from './take-step.tsx';
import styles from './working.module.css';
import { WorkingSum } from './working-sum.tsx';

export const metadata = { title: 'Working of a reason' };

const reasonAddress = clientAddress.extend({ reasonId: z.uuid() });

/** One reason opened: what went in, how it was judged, what would clear it, what became of it. */
export default async function WorkingPage({ params }: { params: Promise<unknown> }) {
  const actor = await requireActor('see-clients');
  const address = reasonAddress.safeParse(await params);
  const loaded = address.success ? await loadReason(actor, address.data, now()) : undefined;
  if (!loaded) notFound();
  after(() => noteRead(actor, loaded.client.id, 'reason', now()));
  const { client, reason } = loaded;
  const draft =
    may(actor.role, 'act-on-reasons') && reason.closedAt === null
      ? await loadStepDraft(actor, { clientId: client.id, reasonId: reason.id }, now())
      : null;
  const view = workingView(reason, { today: now(), zone: client.zone });
  return (
    <main id="main" tabIndex={-1} className={styles.page}>
      <TheLine />
      <header className={styles.head}>
        <h1>{client.name}</h1>
        <p>
          Working of one reason. <Link href={`/clients/${client.id}`}>Back to the client page</Link>
        </p>
      </header>
      <WorkingSum view={view} tier={reason.tier} sentence={reason.sentence} />
      <BesideWorking loaded={loaded} view={view}>
        {draft ? <TakeStep clientId={client.id} name={client.name} draft={draft} /> : null}
      </BesideWorking>
    </main>
  );
}
