import Link from 'next/link';
import { notFound } from 'next/navigation';
import { after } from 'next/server';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { loadClientRights } from '#lib/usecases/rights/load-client-rights.ts';
import { noteRead } from '#lib/usecases/rights/note-read.ts';
import { momentAsSaid } from '#lib/views/phone-dates.ts';
import { auditWords, byWhom } from '#lib/views/rights/audit-words.ts';
import { consentForCoach } from '#lib/views/rights/consent-words.ts';
import { keptForCoach } from '#lib/views/rights/own-data.ts';
import { cameFromLines } from '#lib/views/take-in.ts';
import forms from '../../_parts/forms.module.css';
import { Deletion } from './deletion.tsx';
import styles from './rights.module.css';

export const metadata = { title: 'Consent and record' };

export default async function RightsPage({ params }: { params: Promise<unknown> }) {
  const actor = await requireActor('see-clients');
  const address = clientAddress.safeParse(await params);
  const at = now();
  const found = address.success ? await loadClientRights(actor, address.data.clientId, at) : undefined;
  if (!found) notFound();
  after(() => noteRead(actor, found.id, 'record', now()));
  const keeps = may(actor.role, 'keep-records');
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>{found.name}: consent and record</h1>
      <p className={forms.lead}>
        <Link href={`/clients/${found.id}`}>Back to the page of {found.name}</Link>
      </p>
      <h2>Consent</h2>
      <p className={styles.said}>{consentForCoach(found.health, found.share, found.zone, at)}</p>
      {found.cameFrom
        ? cameFromLines(found.cameFrom, found.zone, at).map((line) => (
            <p key={line} className={styles.said}>
              {line}
            </p>
          ))
        : null}
      <h2>What is kept</h2>
      <ul className={styles.kept}>
        {keptForCoach(found.kept).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {may(actor.role, 'export-clients') ? (
        <p>
          <a href={`/api/clients/${found.id}/export`} download>
            Take the record out
          </a>
        </p>
      ) : null}
      <h2>Deletion</h2>
      <Deletion client={found} keeps={keeps} />
      {keeps ? (
        <>
          <h2>Who looked, and what was done</h2>
          {found.lines.length === 0 ? <p>Nothing stands in the record of acts yet.</p> : null}
          <ul className={styles.lines}>
            {found.lines.map((line) => (
              <li key={line.id}>
                <span>{momentAsSaid(line.at, found.zone, at)}</span> {byWhom(line)} {auditWords(line)}
              </li>
            ))}
          </ul>
          <p>
            <Link href={`/team/audit?client=${found.id}`}>All of it</Link>
          </p>
        </>
      ) : null}
    </main>
  );
}
