import { notFound } from 'next/navigation';
import { after } from 'next/server';
import { TheLine } from '#app/_ui/the-line.tsx';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { loadClientFilms } from '#lib/usecases/film/load-client-films.ts';
import { loadClient } from '#lib/usecases/load-client.ts';
import { noteRead } from '#lib/usecases/rights/note-read.ts';
import { loadClientStills } from '#lib/usecases/stills/load-client-stills.ts';
import { loadApprovals } from '#lib/usecases/team/load-approvals.ts';
import { loadClientTeam } from '#lib/usecases/team/load-client-team.ts';
import { AxisRow } from './_page/axis-row.tsx';
import { BalanceWindow } from './_page/balance-window.tsx';
import { CheckIns } from './_page/check-ins.tsx';
import styles from './_page/client-page.module.css';
import { Films } from './_page/films.tsx';
import { Head } from './_page/head.tsx';
import { KeptStills } from './_page/kept-stills.tsx';
import { Ladders } from './_page/ladders.tsx';
import { Load } from './_page/load.tsx';
import { Pain } from './_page/pain.tsx';
import { Pairs } from './_page/pairs.tsx';
import { PastReasons } from './_page/past-reasons.tsx';
import { PlanAndActs } from './_page/plan-and-acts.tsx';
import { ReadingArea } from './_page/reading/reading-area.tsx';
import { StepsTried } from './_page/steps-tried.tsx';
import { TeamNews } from './_page/team-news.tsx';

export const metadata = { title: 'Client' };

type Props = { params: Promise<unknown>; searchParams: Promise<{ saved?: string | string[] }> };

export default async function ClientPage({ params, searchParams }: Props) {
  const actor = await requireActor('see-clients');
  const address = clientAddress.safeParse(await params);
  const loaded = address.success ? await loadClient(actor, address.data.clientId, now()) : undefined;
  if (!loaded) notFound();
  const { page } = loaded;
  after(() => noteRead(actor, page.id, 'client-page', now()));
  const team = await loadClientTeam(actor, page.id, now());
  const stills = await loadClientStills(actor, page.id, now());
  const approvals = await loadApprovals(actor, { clientId: page.id }, now());
  const films = await loadClientFilms(actor, page.id, now());
  const { saved } = await searchParams;
  return (
    <main id="main" tabIndex={-1}>
      <ReadingArea readings={page.readings} className={styles.upper}>
        <TheLine />
        <Head
          page={page}
          waits={loaded.waits}
          saved={typeof saved === 'string' && /^\d{1,5}$/.test(saved) ? saved : undefined}
          mayExport={may(actor.role, 'export-clients')}
          mayEdit={may(actor.role, 'edit-clients')}
        />
        <TeamNews
          note={team?.note ?? null}
          approvals={approvals}
          mayApprove={may(actor.role, 'approve-acts')}
        />
        <AxisRow axis={page.axis} />
        <Ladders ladders={page.ladders} />
        <Load load={page.load} axis={page.axis} />
        <Pain pain={page.pain} />
        <Pairs pairs={page.pairs} />
        <BalanceWindow windows={page.windows} />
        <AxisRow axis={page.axis} foot />
      </ReadingArea>
      <div className={styles.lower}>
        <div>
          <CheckIns
            clientId={page.id}
            entries={page.timeline}
            mayWrite={may(actor.role, 'write-to-clients')}
          />
          {films ? (
            <Films clientId={page.id} films={films} mayAct={may(actor.role, 'act-on-reasons')} />
          ) : null}
          <KeptStills stills={stills} />
          <StepsTried clientId={page.id} steps={loaded.tried} />
          <PastReasons clientId={page.id} lines={loaded.past} />
        </div>
        <PlanAndActs loaded={loaded} team={team} mayEdit={may(actor.role, 'edit-clients')} />
      </div>
    </main>
  );
}
