import type { Metadata } from 'next';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadToday } from '#lib/usecases/load-today.ts';
import { BackHead } from '../_phone/back-head.tsx';
import { AwayForm } from './away-form.tsx';

export const metadata: Metadata = { title: 'Away or ill' };

export default async function AwayPage() {
  const actor = await requireActor('check-in');
  const today = await loadToday(actor, now());
  return (
    <div className="phone">
      <BackHead to="/today" page="Today">
        {today.client.teamName}
      </BackHead>
      <AwayForm today={today.date} coach={today.client.coachName} />
    </div>
  );
}
