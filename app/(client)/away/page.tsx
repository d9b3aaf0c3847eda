import type { Metadata } from 'next';
import Link from 'next/link';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadToday } from '#lib/usecases/load-today.ts';
import { Back } from '../_phone/icons.tsx';
import { AwayForm } from './away-form.tsx';

export const metadata: Metadata = { title: 'Away or ill' };

export default async function AwayPage() {
  const actor = await requireActor('check-in');
  const today = await loadToday(actor, now());
  return (
    <div className="phone">
      <header className="phone-head">
        <Link className="back" href="/today" aria-label="Back to Today">
          <Back />
        </Link>
        <span className="state">{today.client.teamName}</span>
      </header>
      <AwayForm today={today.date} coach={today.client.coachName} />
    </div>
  );
}
