import Link from 'next/link';
import type { ConsentState } from '#lib/domain/consent.ts';
import { consentLine } from '#lib/views/rights/consent-words.ts';
import { TakeBack } from './take-back.tsx';

type Props = { health: ConsentState; share: ConsentState; coach: string; zone: string; now: Date };

/** How the own consent stands, with the way to read it again and to take it back. */
export function OwnConsent({ health, share, coach, zone, now }: Props) {
  const given = health.state === 'given' || health.state === 'older';
  const hands = share.state === 'given' || share.state === 'older';
  return (
    <>
      <h2 className="rights-head">Your consent</h2>
      <p className="rights-line">{consentLine(health, coach, zone, now)}</p>
      {given ? (
        <p className="rights-line">
          {hands
            ? 'Your coach may hand your record to the next coach or to a clinician.'
            : 'Your coach is to ask before your record is handed to anybody.'}
        </p>
      ) : null}
      <p className="word-acts">
        <Link className="word-act" href="/consent">
          {health.state === 'given' ? 'Read the text' : 'Read the text and give it'}
        </Link>
      </p>
      {given ? <TakeBack coach={coach} /> : null}
    </>
  );
}
