import type { Metadata } from 'next';
import Link from 'next/link';
import { redirect } from 'next/navigation';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadConsent } from '#lib/usecases/rights/load-consent.ts';
import { consentLine } from '#lib/views/rights/consent-words.ts';
import { SendState } from '../_phone/send-state.tsx';
import { ConsentForm } from './consent-form.tsx';

export const metadata: Metadata = { title: 'Before you start' };

const HEADS = {
  none: 'Before you start',
  older: 'The text has changed',
  withdrawn: 'Your consent',
  given: 'What you agreed to',
} as const;

export default async function ConsentPage() {
  const actor = await requireActor('own-record');
  if (actor.role === 'guardian') redirect('/guardian');
  const asked = await loadConsent(actor);
  const { health, text, teamName, coachName } = asked;
  const given = health.state === 'given';
  return (
    <div className="phone">
      <header className="phone-head">
        <span className="mark">{teamName}</span>
        <SendState clientId={asked.clientId} received={null} />
      </header>
      <main>
        <h1>{HEADS[health.state]}</h1>
        <p className="quiet rights-line">{consentLine(health, coachName, asked.zone, now())}</p>
        <ul className="rights-text">
          {text.health.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        {given ? (
          <p className="quiet">{asked.share ? `And: ${text.share}` : ''}</p>
        ) : (
          <ConsentForm text={text} share={asked.share} asksGuardian={asked.asksGuardian} />
        )}
        <p className="word-acts rights-foot">
          <Link className="word-act" href="/your-data">
            Your data
          </Link>
          {given ? (
            <Link className="word-act" href="/today">
              Today
            </Link>
          ) : null}
        </p>
      </main>
    </div>
  );
}
