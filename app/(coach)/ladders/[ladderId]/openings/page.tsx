import Link from 'next/link';
import { notFound } from 'next/navigation';
import { requireActor } from '#lib/auth/require-actor.ts';
import { ladderAddress } from '#lib/schemas/ladder.ts';
import { loadOpenings } from '#lib/usecases/load-openings.ts';
import { openingsForm } from '#lib/views/ladders/opening-form.ts';
import forms from '../../../clients/_parts/forms.module.css';
import { OpeningsEditor } from '../../_parts/openings-editor.tsx';

export const metadata = { title: 'Openings' };

export default async function OpeningsPage({ params }: { params: Promise<unknown> }) {
  const actor = await requireActor('edit-ladders');
  const address = ladderAddress.safeParse(await params);
  const loaded = address.success ? await loadOpenings(actor, address.data.ladderId) : undefined;
  if (!loaded) notFound();
  const { ladder, base, rungs } = loaded;
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>Openings of {ladder.name}</h1>
      <p className={forms.lead}>
        What must stand before a rung of this ladder, and with it all harder ones. The gap finder asks a new
        client for it and chooses no drill that is not open yet; a plan is never stopped by it.{' '}
        <Link href={`/ladders/${ladder.id}`}>Back to {ladder.name}</Link>
      </p>
      <OpeningsEditor ladder={{ ladderId: ladder.id, base }} first={openingsForm(ladder, rungs)} />
    </main>
  );
}
