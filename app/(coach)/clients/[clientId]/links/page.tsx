import Link from 'next/link';
import { notFound } from 'next/navigation';
import { after } from 'next/server';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { loadLinks } from '#lib/usecases/handover/load-links.ts';
import { noteRead } from '#lib/usecases/rights/note-read.ts';
import { linkOpenings, linkState, shareLine } from '#lib/views/handover-links.ts';
import forms from '../../_parts/forms.module.css';
import styles from './links.module.css';
import { MakeLinkForm } from './make-link-form.tsx';

export const metadata = { title: 'Links to the record' };

/** Read-only pages of this record for people outside: a new one, and how each stands. */
export default async function LinksPage({ params }: { params: Promise<unknown> }) {
  const actor = await requireActor('export-clients');
  const address = clientAddress.safeParse(await params);
  const at = now();
  const found = address.success ? await loadLinks(actor, address.data.clientId, at) : undefined;
  if (!found) notFound();
  after(() => noteRead(actor, found.id, 'record', at));
  const { id, name, zone, share, shut, links } = found;
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>{name}: links to the record</h1>
      <p className={forms.lead}>
        A page to read for one person outside the team, a physiotherapist or the next coach. It needs no
        account, ends by itself, and opens only with a code that you send another way.{' '}
        <Link href={`/clients/${id}`}>Back to the page of {name}</Link>
      </p>
      <h2>A new link</h2>
      {shut ? (
        <p className={styles.said}>
          {shut === 'consent'
            ? `${name} took the consent back: nothing is shown to others, and every link has ended.`
            : `The record of ${name} is about to be deleted: nothing is shown to others, and every link has ended.`}
        </p>
      ) : (
        <>
          <p className={styles.said}>{shareLine(name, share, zone, at)}</p>
          <MakeLinkForm clientId={id} />
        </>
      )}
      <h2>Links so far</h2>
      {links.length === 0 ? <p className={styles.said}>Nobody was given a link to this record yet.</p> : null}
      <ul className={styles.links}>
        {links.map((link) => (
          <li key={link.id}>
            <div>
              <p className={styles.name} dir="auto">
                {link.forWhom}
              </p>
              <p>
                {linkState(link, zone, at)}; {linkOpenings(link, zone, at)}
                {link.withPack ? '; with the pack' : ''}
              </p>
              <p dir="auto">
                {link.by}: {link.why}
              </p>
            </div>
            {link.end === null ? (
              <form action={`/api/clients/${id}/links/${link.id}/end`} method="post">
                <button
                  type="submit"
                  className={forms.other}
                  aria-label={`End it now: the link of ${link.forWhom}`}
                >
                  End it now
                </button>
              </form>
            ) : null}
          </li>
        ))}
      </ul>
    </main>
  );
}
