import type { Metadata } from 'next';
import Link from 'next/link';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { type GuardianPage, loadGuardian } from '#lib/usecases/guardians/load-guardian.ts';
import { momentAsSaid } from '#lib/views/phone-dates.ts';
import styles from '../account.module.css';
import { DecideForm } from './decide-form.tsx';

export const metadata: Metadata = { title: 'For a parent or guardian' };

const HEADS: Record<GuardianPage['state'], (client: string) => string> = {
  asked: (client) => `${client} asks for your yes`,
  agreed: (client) => `What you agreed to for ${client}`,
  declined: () => 'You said no',
  withdrawn: () => 'You took your yes back',
};

export default async function GuardianHome() {
  const actor = await requireActor('act-as-guardian');
  const page = await loadGuardian(actor);
  const { client, coach, state, share } = page;
  return (
    <main className={styles.page}>
      <h1>{HEADS[state](client)}</h1>
      <p className={styles.said}>{stateInWords(page, now())}</p>
      <h2>What it is about</h2>
      <ul>
        {page.about.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <h2>What is kept, as {client} reads it</h2>
      <ul>
        {page.health.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {state === 'agreed' ? (
        <>
          <p>{share.given ? `And: ${share.words}` : ''}</p>
          <p>
            {page.email
              ? `Mails to you go to ${page.email}.`
              : `There is no address of yours, so no mails are sent: tell ${coach} one.`}
          </p>
          <p>
            <Link href="/today">What {client} trains</Link>,{' '}
            <Link href="/your-data">the record, and who looked at it</Link>
          </p>
          <h2>Take it back</h2>
          <p>
            Nothing more is taken in then, and nothing is checked. What was kept stays until deletion is asked
            for.
          </p>
          <form action="/api/guardians/withdraw" method="post">
            <button type="submit" className={styles.quiet}>
              I take my yes back
            </button>
          </form>
        </>
      ) : (
        <DecideForm page={page} />
      )}
    </main>
  );
}

function stateInWords({ state, since, zone, coach, client }: GuardianPage, at: Date): string {
  const when = since ? momentAsSaid(since, zone, at) : '';
  switch (state) {
    case 'asked':
      return `${coach} waits for it. Training does not begin before a parent or guardian agrees.`;
    case 'agreed':
      return `You agreed ${when}.`;
    case 'declined':
      return `You said no ${when}. ${client} does not train here. You can change your mind below.`;
    case 'withdrawn':
      return `You took your yes back ${when}. Nothing is taken in or checked. You can change your mind below.`;
  }
}
