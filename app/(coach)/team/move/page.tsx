import Link from 'next/link';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadMovable } from '#lib/usecases/team/load-movable.ts';
import forms from '../../clients/_parts/forms.module.css';
import { MoveForm } from '../_parts/move-form.tsx';

export const metadata = { title: 'Move clients' };

/** Clients to another coach, several at once, with a note. */
export default async function MovePage() {
  const actor = await requireActor('move-clients');
  const { clients, coaches } = await loadMovable(actor, now());
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>Move clients to another coach</h1>
      <p className={forms.lead}>
        The new coach reads your note at the head of each client’s page until it is marked as read, 14 days at
        most. The move stays in the client’s trace. <Link href="/team">To the team</Link>
      </p>
      {clients.length === 0 || coaches.length < 2 ? (
        <p>
          {clients.length === 0
            ? 'You have no clients to move.'
            : 'There is no second coach yet: ask somebody into the team first.'}
        </p>
      ) : (
        <MoveForm clients={clients} coaches={coaches} />
      )}
    </main>
  );
}
