import { notFound } from 'next/navigation';
import { after } from 'next/server';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { planAddress } from '#lib/schemas/plan-address.ts';
import { loadPlanForm } from '#lib/usecases/load-plan-form.ts';
import { noteRead } from '#lib/usecases/rights/note-read.ts';
import { draftView } from '#lib/views/draft-lines.ts';
import { pack } from '#lib/views/packed.ts';
import { planFormModel } from '#lib/views/plan-form.ts';
import { planOfApproval } from '#lib/views/plan-of-approval.ts';
import { DangersNow } from '../../_parts/dangers-now.tsx';
import forms from '../../_parts/forms.module.css';
import { PlanForm } from './plan-form.tsx';
import { PlanVersions } from './plan-versions.tsx';
import { StartFrom } from './start-from.tsx';

export const metadata = { title: 'Plan' };

type Props = { params: Promise<unknown>; searchParams: Promise<unknown> };

export default async function PlanPage({ params, searchParams }: Props) {
  const actor = await requireActor('prepare-acts');
  const address = clientAddress.safeParse(await params);
  const opened = planAddress.parse(await searchParams);
  const loaded = address.success
    ? await loadPlanForm(actor, address.data.clientId, now(), opened)
    : undefined;
  if (!loaded) notFound();
  after(() => noteRead(actor, loaded.clientId, 'plan', now()));
  const { clientId, clientName, today, sources, copied } = loaded;
  const asked = loaded.approval;
  const filled = planFormModel(asked ? { ...loaded, copied: asked.plan } : loaded);
  const model = asked ? planOfApproval(filled, asked.plan) : filled;
  const draft = loaded.draft ? draftView(loaded.draft, { ...model, today }) : null;
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>Plan for {clientName}</h1>
      <p className={forms.lead}>
        {model.baseVersion === 0
          ? 'The first version. Saving it also places the client on the rungs named here.'
          : `You are changing version ${model.baseVersion}. Saving makes version ${model.baseVersion + 1}; earlier versions stay as they are.`}{' '}
        <a href={`/clients/${clientId}`}>Back to {clientName}</a>
        {opened.draft && !draft
          ? ' The draft in the address is not there any more; this is the plan without it.'
          : ''}
      </p>
      {asked ? (
        <p className={forms.lead}>
          {asked.preparedBy} prepared this version. Change it, then approve it; or{' '}
          <a href="/team/approvals">leave it waiting</a>.
        </p>
      ) : null}
      <DangersNow dangers={loaded.dangers} />
      <StartFrom clientId={clientId} {...sources} copied={copied?.from ?? ''} />
      <PlanForm
        key={`${opened.draft} ${opened.client} ${opened.template} ${opened.approval}`}
        way={{
          prepares: loaded.prepares,
          approvalId: asked?.id ?? null,
          keeps: may(actor.role, 'edit-plans'),
        }}
        packed={pack({
          model: { ...model, versions: [] },
          past: {
            history: loaded.history,
            rungs: loaded.historyRungs,
            yesterday: addDays(today, -1),
            changed: loaded.changed,
            danger: loaded.dangers[0]?.label,
          },
        })}
        draft={draft}
      />
      <PlanVersions versions={model.versions} />
    </main>
  );
}
