import Link from 'next/link';
import { notFound } from 'next/navigation';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { rungAddress } from '#lib/schemas/ladder.ts';
import { loadLadder } from '#lib/usecases/load-ladder.ts';
import { splitPage } from '#lib/views/ladders/split-page.ts';
import forms from '../../../../../clients/_parts/forms.module.css';
import { SplitEditor } from '../../../../_parts/split-editor.tsx';

export const metadata = { title: 'Split a rung' };

export default async function SplitPage({ params }: { params: Promise<unknown> }) {
  const actor = await requireActor('edit-ladders');
  const address = rungAddress.safeParse(await params);
  const loaded = address.success ? await loadLadder(actor, address.data.ladderId, now()) : undefined;
  const page = address.success && loaded ? splitPage(loaded.ladder, address.data.rungId) : undefined;
  if (!loaded || !page) notFound();
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>Split “{page.name}”</h1>
      <p className={forms.lead}>
        Puts smaller steps below this rung. The rung itself, {page.mark}, stays as the last and hardest of
        them, and whoever stands on it stays there.{' '}
        <Link href={`/ladders/${loaded.ladder.id}`}>Back to {loaded.ladder.name}</Link>
      </p>
      <SplitEditor ladder={{ ladderId: loaded.ladder.id, base: loaded.base }} page={page} />
    </main>
  );
}
