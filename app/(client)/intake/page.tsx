import type { Metadata } from 'next';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadIntake } from '#lib/usecases/intake/load-intake.ts';
import { momentAsSaid } from '#lib/views/phone-dates.ts';
import { ForgetKept } from './forget-kept.tsx';
import { IntakeScreen } from './intake-screen.tsx';
import { SentBefore } from './sent-before.tsx';

export const metadata: Metadata = { title: 'Before you start' };

export default async function IntakePage() {
  const actor = await requireActor('check-in');
  const at = now();
  const { sentAt, zone, ...intake } = await loadIntake(actor, at);
  if (sentAt)
    return (
      <>
        <ForgetKept clientId={intake.clientId} />
        <SentBefore when={momentAsSaid(new Date(sentAt), zone, at)} coach={intake.coach} />
      </>
    );
  return <IntakeScreen {...intake} now={at.toISOString()} />;
}
