import { notFound } from 'next/navigation';
import { after } from 'next/server';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { gapAddress } from '#lib/schemas/assessment.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { loadGaps } from '#lib/usecases/load-gaps.ts';
import { noteRead } from '#lib/usecases/rights/note-read.ts';
import { dangersNow } from '#lib/views/dangers-now.ts';
import { gapForm } from '#lib/views/gaps/gap-form.ts';
import { gapFound } from '#lib/views/gaps/gap-found.ts';
import { longDate } from '#lib/views/say-date.ts';
import { DangersNow } from '../../_parts/dangers-now.tsx';
import forms from '../../_parts/forms.module.css';
import { AimForm } from './aim-form.tsx';
import { AssessmentForm } from './assessment-form.tsx';
import { Earlier } from './earlier.tsx';
import { Found } from './found.tsx';

export const metadata = { title: 'Gaps' };

type Props = { params: Promise<unknown>; searchParams: Promise<unknown> };

export default async function GapsPage({ params, searchParams }: Props) {
  const actor = await requireActor('edit-plans');
  const address = clientAddress.safeParse(await params);
  const asked = gapAddress.safeParse(await searchParams);
  const loaded = address.success
    ? await loadGaps(actor, address.data.clientId, asked.data ?? {}, now())
    : undefined;
  if (!loaded) notFound();
  after(() => noteRead(actor, loaded.client.id, 'gaps', now()));
  const { client, context, assessment, asks, kept, earlier } = loaded;
  const form = gapForm({
    clientId: client.id,
    under18: client.under18,
    library: context.library,
    assessment,
    asks,
  });
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>Gaps of {client.name}</h1>
      <p className={forms.lead}>
        {kept
          ? `${kept.row.skill}, assessed on ${longDate(kept.row.onDate)} by ${kept.row.by}; drills as of today's limits, pain and plan.`
          : 'Film one slow lowering or attempt, then say part by part what it shows.'}{' '}
        <a href={`/clients/${client.id}`}>Back to {client.name}</a>
      </p>
      <DangersNow dangers={dangersNow(loaded.view)} />
      {kept ? (
        <Found found={gapFound(kept.result, context)} clientId={client.id} assessmentId={kept.row.id} />
      ) : null}
      {kept ? null : <AimForm model={form} />}
      {kept ? (
        <details>
          <summary>Change what was seen</summary>
          <AssessmentForm key={kept.row.id} model={form} />
        </details>
      ) : (
        <AssessmentForm key={`${form.skillId} ${form.aimRungId}`} model={form} />
      )}
      <Earlier clientId={client.id} rows={earlier} shown={kept?.row.id} />
    </main>
  );
}
