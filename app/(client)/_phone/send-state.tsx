'use client';
import Link from 'next/link';
import { shortDate } from '#lib/views/phone-dates.ts';
import { clockWords } from './clock-words.ts';
import { useKept } from './use-kept.ts';

type Props = { clientId: string; received: { date: string; clock: string } | null };

/** The truth at the head of every tab: what is still on this phone, else when the last check-in was sent. */
export function SendState({ clientId, received }: Props) {
  const { unsent, lastSent, ready } = useKept(clientId);
  const refused = unsent.filter((one) => one.problem !== null);
  const waiting = unsent.length - refused.length;
  if (waiting > 0) {
    const last = unsent.find((one) => one.problem === null);
    return (
      <span className="state" role="status">
        {waiting === 1 ? 'saved on this phone' : `${waiting} saved on this phone`}{' '}
        {last ? clockWords(last.savedAt) : ''}, not sent yet
        {last?.signedOut ? ': open your link again' : last?.needsConsent ? ': your consent comes first' : ''}
      </span>
    );
  }
  if (refused.length > 0) {
    return (
      <span className="state" role="status">
        {refused.length === 1 ? '1 check-in' : `${refused.length} check-ins`} could not be sent
      </span>
    );
  }
  const sent = ready && lastSent ? { date: lastSent.date, clock: clockWords(lastSent.at) } : received;
  return (
    <span className="state" role="status">
      {sent ? `${shortDate(sent.date)} sent ${sent.clock}` : ''}
    </span>
  );
}

/** What could not be sent, each with its reason and the way to change it. */
export function RefusedList({ clientId }: { clientId: string }) {
  const refused = useKept(clientId).unsent.filter((one) => one.problem !== null);
  return refused.map((one) => (
    <section key={one.body.id} className="problem">
      <h2>{shortDate(one.body.date)} could not be sent. It is kept on this phone.</h2>
      <p>{one.problem}</p>
      <Link className="word-act" href={`/check-in?unsent=${one.body.id}`}>
        Change it and send again
      </Link>
    </section>
  ));
}
