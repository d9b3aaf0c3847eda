import type { Metadata } from 'next';
import { z } from 'zod';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadOwnCheckIn } from '#lib/usecases/load-own-check-in.ts';
import { loadToday } from '#lib/usecases/load-today.ts';
import { phoneForm, withFilmNotes } from '#lib/views/phone-form.ts';
import { KeepForm } from '../_phone/keep-form.tsx';
import { CheckInScreen } from './check-in-screen.tsx';

export const metadata: Metadata = { title: 'Check in' };

const query = z.object({
  correct: z.uuid().optional().catch(undefined),
  unsent: z.uuid().optional().catch(undefined),
});

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> };

export default async function CheckInPage({ searchParams }: Props) {
  const actor = await requireActor('check-in');
  const { correct, unsent } = query.parse(await searchParams);
  const today = await loadToday(actor, now());
  const kept = correct ? await loadOwnCheckIn(actor, correct) : null;
  return (
    <>
      <KeepForm form={phoneForm(today)} />
      <noscript>
        <div className="phone phone-plain">
          <p className="problem">
            This browser runs no scripts. <a href="/check-in/plain">Check in with the plain form</a>.
          </p>
        </div>
      </noscript>
      <CheckInScreen
        clientId={today.clientId}
        kind={kept?.checkIn.kind ?? 'training'}
        today={today.date}
        coach={today.client.coachName}
        under18={today.client.under18}
        planVersion={today.planVersion}
        usualMinutes={today.client.usualMinutes}
        sessions={kept ? kept.sessions : withFilmNotes(today.sessions, today.films)}
        otherDrills={today.otherDrills}
        lastPain={today.lastPain}
        kept={kept?.checkIn ?? null}
        unsentId={unsent ?? null}
      />
    </>
  );
}
