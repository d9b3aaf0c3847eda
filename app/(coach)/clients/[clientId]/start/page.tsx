import Link from 'next/link';
import { notFound } from 'next/navigation';
import { after } from 'next/server';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { startAsked } from '#lib/schemas/start-tests.ts';
import { noteRead } from '#lib/usecases/rights/note-read.ts';
import { loadStart } from '#lib/usecases/start/load-start.ts';
import { startLead } from '#lib/views/start/start-words.ts';
import { DangersNow } from '../../_parts/dangers-now.tsx';
import forms from '../../_parts/forms.module.css';
import { AimsForm } from './aims-form.tsx';
import { AskForm } from './ask-form.tsx';
import { Came } from './came.tsx';
import { PlaceForm } from './place-form.tsx';
import { StartPlanForm } from './start-plan-form.tsx';

export const metadata = { title: 'Start' };

type Props = { params: Promise<unknown>; searchParams: Promise<unknown> };

export default async function StartPage({ params, searchParams }: Props) {
  const actor = await requireActor('see-clients');
  const address = clientAddress.safeParse(await params);
  const asked = startAsked.parse(await searchParams);
  const page = address.success ? await loadStart(actor, address.data.clientId, asked, now()) : undefined;
  if (!page) notFound();
  after(() => noteRead(actor, page.clientId, 'start', now()));
  const { asked: tests } = page;
  const isOpen = tests !== null && tests.placedOn === null;
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>Start of {page.name}</h1>
      <p className={forms.lead}>
        {startLead(page)} <Link href={`/clients/${page.clientId}`}>Back to {page.name}</Link>
      </p>
      <DangersNow dangers={page.dangers} />
      {tests ? <Came page={page} tests={tests} /> : null}
      {tests ? (
        <PlaceForm key={`${tests.id} ${tests.answered} ${tests.placedOn}`} page={page} tests={tests} />
      ) : null}
      {tests && page.mayPlan ? <StartPlanForm page={page} tests={tests} /> : null}
      {isOpen || !page.mayEdit ? null : (
        <>
          <h2>{tests ? 'Ask others' : 'Ask start tests'}</h2>
          <AimsForm page={page} />
          {page.proposed.length > 0 ? (
            <AskForm key={JSON.stringify([page.aims, page.kit])} page={page} />
          ) : (
            <p>Choose at least one skill: the tests that place the client follow from it.</p>
          )}
        </>
      )}
    </main>
  );
}
