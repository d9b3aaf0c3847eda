import Link from 'next/link';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadLadders } from '#lib/usecases/load-ladders.ts';
import { partChoices } from '#lib/views/ladders/ladder-list.ts';
import forms from '../../clients/_parts/forms.module.css';
import { NewLadderForm } from '../_parts/new-ladder-form.tsx';

export const metadata = { title: 'New ladder' };

export default async function NewLadderPage() {
  const actor = await requireActor('edit-ladders');
  const { outline } = await loadLadders(actor, now());
  const parts = partChoices(outline);
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>New ladder</h1>
      <p className={forms.lead}>
        It stands last in its part. Its rungs come next. <Link href="/ladders">Back to Ladders</Link>
      </p>
      {parts.length === 0 ? (
        <p>A ladder serves a part of a skill. Add a skill and a part on the page before, then come back.</p>
      ) : (
        <NewLadderForm parts={parts} />
      )}
    </main>
  );
}
