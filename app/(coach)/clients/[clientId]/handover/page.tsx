import { notFound } from 'next/navigation';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { AppError } from '#lib/errors.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { packSchema } from '#lib/schemas/pack.ts';
import { previewPack } from '#lib/usecases/handover/preview-pack.ts';
import forms from '../../_parts/forms.module.css';
import { HandoverForm } from './handover-form.tsx';

export const metadata = { title: 'Hand over' };

type Props = { params: Promise<unknown> };

export default async function HandoverPage({ params }: Props) {
  const actor = await requireActor('export-clients');
  const address = clientAddress.safeParse(await params);
  if (!address.success) notFound();
  const { clientId } = address.data;
  const options = packSchema.parse({});
  const preview = await previewPack(actor, { clientId, options }, now()).catch((error: unknown) => {
    if (error instanceof AppError && error.code === 'not-found') return undefined;
    throw error;
  });
  if (!preview) notFound();
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>Hand over {preview.name}</h1>
      <p className={forms.lead}>
        One zip for the next coach or a clinician: a report to read first, and behind it everything that is
        kept. Look at the first page, then make it. For one person to read without a file there are{' '}
        <a href={`/clients/${clientId}/links`}>links that end</a>.{' '}
        <a href={`/clients/${clientId}`}>Back to {preview.name}</a>
      </p>
      <HandoverForm clientId={clientId} first={preview} />
    </main>
  );
}
