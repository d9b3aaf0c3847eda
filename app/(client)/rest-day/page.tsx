import type { Metadata } from 'next';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadToday } from '#lib/usecases/load-today.ts';
import { CheckInScreen } from '../check-in/check-in-screen.tsx';

export const metadata: Metadata = { title: 'No training today' };

export default async function RestDayPage() {
  const actor = await requireActor('check-in');
  const today = await loadToday(actor, now());
  return (
    <CheckInScreen
      clientId={today.clientId}
      kind="rest"
      today={today.date}
      coach={today.client.coachName}
      under18={today.client.under18}
      planVersion={null}
      usualMinutes={null}
      sessions={[]}
      morning={today.morning}
      lastPain={today.lastPain}
      kept={null}
      unsentId={null}
    />
  );
}
