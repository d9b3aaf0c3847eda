import Link from 'next/link';
import { notFound } from 'next/navigation';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { rungAddress } from '#lib/schemas/ladder.ts';
import { loadLadder } from '#lib/usecases/load-ladder.ts';
import { rungPage } from '#lib/views/ladders/rung-page.ts';
import forms from '../../../../clients/_parts/forms.module.css';
import { RungEditor } from '../../../_parts/rung-editor.tsx';

export const metadata = { title: 'Rung' };

export default async function RungPage({ params }: { params: Promise<unknown> }) {
  const actor = await requireActor('edit-ladders');
  const address = rungAddress.safeParse(await params);
  const loaded = address.success ? await loadLadder(actor, address.data.ladderId, now()) : undefined;
  const page = address.success && loaded ? rungPage(loaded, address.data.rungId) : undefined;
  if (!loaded || !page) notFound();
  const { ladder, base, sources } = loaded;
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>{page.title}</h1>
      <p className={forms.lead}>
        {page.place} <Link href={`/ladders/${ladder.id}`}>Back to {ladder.name}</Link>
      </p>
      <RungEditor
        ladder={{ ladderId: ladder.id, base, family: ladder.family }}
        target={{ rungId: page.rungId, sharedWith: page.sharedWith, retired: page.retired }}
        first={page.form}
        sources={sources}
        swapRungs={page.swapRungs}
      />
    </main>
  );
}
