import Link from 'next/link';
import { notFound } from 'next/navigation';
import { z } from 'zod';
import { Mark } from '#app/_ui/marks.tsx';
import { TheLine } from '#app/_ui/the-line.tsx';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { loadReason } from '#lib/usecases/load-client.ts';
import { loadStepDraft } from '#lib/usecases/load-step-draft.ts';
import { workingView } from '#lib/views/working.ts';
import { Said } from '../../_page/said.tsx';
import { TakeStep } from './take-step.tsx';
import styles from './working.module.css';

export const metadata = { title: 'Working of a reason' };

const reasonAddress = clientAddress.extend({ reasonId: z.uuid() });

export default async function WorkingPage({ params }: { params: Promise<unknown> }) {
  const actor = await requireActor('see-clients');
  const address = reasonAddress.safeParse(await params);
  const loaded = address.success ? await loadReason(actor, address.data) : undefined;
  if (!loaded) notFound();
  const { client, reason } = loaded;
  const draft = may(actor.role, 'act-on-reasons')
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
      <section className={styles.left} aria-labelledby="kind">
        <h2 id="kind">
          {reason.tier ? <Mark tier={reason.tier} /> : null} {view.title}
        </h2>
        <p className={styles.since}>{view.since}</p>
        <p className={styles.sentence}>
          <Said text={reason.sentence} />
        </p>
        <table className={styles.sum}>
          <caption>What it is computed from</caption>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">Number</th>
            </tr>
          </thead>
          <tbody>
            {view.inputs.map((input) => (
              <tr key={input.name}>
                <th scope="row">{input.name}</th>
                <td>{input.said}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <h3>How</h3>
        <p className={styles.formula}>{view.formula}</p>
        <table className={styles.sum}>
          <caption>Thresholds that decided</caption>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">Number</th>
              <th scope="col">Where it comes from</th>
            </tr>
          </thead>
          <tbody>
            {view.thresholds.map((one) => (
              <tr key={one.id}>
                <th scope="row">{one.meaning}</th>
                <td>{one.said}</td>
                <td>{one.source}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <p className={styles.answer}>{view.days}</p>
      </section>
      <aside className={styles.right} aria-label="What to do with it">
        <h2>What would clear it</h2>
        <p className={styles.sentence}>{reason.clears}</p>
        <h2>Proposed next step</h2>
        <p>{reason.step.text}</p>
        {draft ? <TakeStep clientId={client.id} name={client.name} draft={draft} /> : null}
        <h2>What this does not say</h2>
        <p>{view.doubt}</p>
      </aside>
    </main>
  );
}
