import { randomUUID } from 'node:crypto';
import type { Metadata } from 'next';
import Link from 'next/link';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadToday } from '#lib/usecases/load-today.ts';
import { PlainPain } from './plain-pain.tsx';
import { PlainSets } from './plain-sets.tsx';

export const metadata: Metadata = { title: 'Check in, plain form' };

const MOST_MINUTES = 600;

/** The check-in where scripts do not run: one form, posted as it is. */
export default async function PlainCheckInPage() {
  const actor = await requireActor('check-in');
  const today = await loadToday(actor, now());
  const [session] = today.sessions;
  return (
    <div className="phone phone-plain">
      <main>
        <h1>Check in</h1>
        <p className="quiet">
          The plain form, for a browser that runs no scripts. It is not kept on this phone: without signal it
          can not be sent.
        </p>
        <form action="/api/check-ins/plain" method="post" className="plain-form">
          <input type="hidden" name="id" value={randomUUID()} />
          <input type="hidden" name="zone" value={today.client.zone} />
          <input type="hidden" name="session" value={session?.label ?? ''} />
          <input type="hidden" name="planVersion" value={today.planVersion ?? ''} />
          <label>
            Day
            <input type="date" name="date" defaultValue={today.date} max={today.date} required />
          </label>
          <fieldset>
            <legend>That day</legend>
            <label className="plain-tick">
              <input type="radio" name="kind" value="training" required /> Trained
            </label>
            <label className="plain-tick">
              <input type="radio" name="kind" value="rest" required /> No training
            </label>
          </fieldset>
          {session ? <PlainSets session={session} /> : null}
          <label>
            How hard was it, 0 rest to 10 maximal
            <input name="effort" inputMode="numeric" autoComplete="off" />
          </label>
          <label>
            How long, minutes, up to {MOST_MINUTES}
            <input name="minutes" inputMode="numeric" autoComplete="off" />
          </label>
          <PlainPain />
          <label>
            Words to {today.client.coachName}
            <textarea name="words" rows={3} maxLength={4000} />
          </label>
          <label>
            A question
            <textarea name="question" rows={2} maxLength={4000} />
          </label>
          <button type="submit" className="act act-filled">
            Send
          </button>
        </form>
        <p className="quiet">
          A danger sign, such as numbness, weakness, a fall on the head or pain of 6 or more: stop, and see a
          licensed clinician before it goes on.
        </p>
        <div className="word-acts centre">
          <Link className="word-act" href="/today" prefetch={false}>
            Back to Today
          </Link>
        </div>
      </main>
    </div>
  );
}
