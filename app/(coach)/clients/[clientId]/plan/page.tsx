import { notFound } from 'next/navigation';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { loadPlanForm } from '#lib/usecases/load-plan-form.ts';
import { planFormModel } from '#lib/views/plan-form.ts';
import styles from '../../_parts/forms.module.css';
import { PlanForm } from './plan-form.tsx';
import { PlanVersions } from './plan-versions.tsx';

export const metadata = { title: 'Plan' };

export default async function PlanPage({ params }: { params: Promise<unknown> }) {
  const actor = await requireActor('edit-plans');
  const address = clientAddress.safeParse(await params);
  const loaded = address.success ? await loadPlanForm(actor, address.data.clientId, now()) : undefined;
  if (!loaded) notFound();
  const model = planFormModel(loaded);
  return (
    <main id="main" tabIndex={-1} className={styles.page}>
      <h1>Plan for {loaded.clientName}</h1>
      <p className={styles.lead}>
        {model.baseVersion === 0
          ? 'The first version. Saving it also places the client on the rungs named here.'
          : `You are changing version ${model.baseVersion}. Saving makes version ${model.baseVersion + 1}; earlier versions stay as they are.`}{' '}
        <a href={`/clients/${loaded.clientId}`}>Back to {loaded.clientName}</a>
      </p>
      <PlanForm model={model} />
      <PlanVersions versions={model.versions} />
    </main>
  );
}
