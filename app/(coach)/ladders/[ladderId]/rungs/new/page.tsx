import Link from 'next/link';
import { notFound } from 'next/navigation';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { ladderAddress } from '#lib/schemas/ladder.ts';
import { loadLadder } from '#lib/usecases/load-ladder.ts';
import { newRungPage } from '#lib/views/ladders/rung-page.ts';
import forms from '../../../../clients/_parts/forms.module.css';
import { RungEditor } from '../../../_parts/rung-editor.tsx';

export const metadata = { title: 'New rung' };

export default async function NewRungPage({ params }: { params: Promise<unknown> }) {
  const actor = await requireActor('edit-ladders');
  const address = ladderAddress.safeParse(await params);
  const loaded = address.success ? await loadLadder(actor, address.data.ladderId, now()) : undefined;
  if (!loaded) notFound();
  const { ladder, base, sources } = loaded;
  const page = newRungPage(ladder);
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>New rung of {ladder.name}</h1>
      <p className={forms.lead}>
        {page.like
          ? `The drill is filled in as on “${page.like}”: change what differs.`
          : 'The first rung of this ladder.'}{' '}
        <Link href={`/ladders/${ladder.id}`}>Back to {ladder.name}</Link>
      </p>
      <RungEditor
        ladder={{ ladderId: ladder.id, base, family: ladder.family }}
        target={{ above: page.above, places: page.places }}
        first={page.form}
        sources={sources}
        swapRungs={null}
      />
    </main>
  );
}
