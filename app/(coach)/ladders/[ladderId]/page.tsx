import Link from 'next/link';
import { notFound } from 'next/navigation';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { ladderAddress } from '#lib/schemas/ladder.ts';
import { loadLadder } from '#lib/usecases/load-ladder.ts';
import { partChoices } from '#lib/views/ladders/ladder-list.ts';
import { ladderPage } from '#lib/views/ladders/ladder-page.ts';
import { openingLines } from '#lib/views/ladders/opening-in-words.ts';
import { saidChange } from '#lib/views/ladders/said-change.ts';
import forms from '../../clients/_parts/forms.module.css';
import styles from '../_parts/ladder.module.css';
import { LadderActs } from '../_parts/ladder-acts.tsx';
import { LadderHead } from '../_parts/ladder-head.tsx';
import { Openings } from '../_parts/openings.tsx';
import { RetiredRungs } from '../_parts/retired-rungs.tsx';
import { RungRows } from '../_parts/rung-rows.tsx';

export const metadata = { title: 'Ladder' };

export default async function LadderPage({ params }: { params: Promise<unknown> }) {
  const actor = await requireActor('see-ladders');
  const address = ladderAddress.safeParse(await params);
  const loaded = address.success ? await loadLadder(actor, address.data.ladderId, now()) : undefined;
  if (!loaded) notFound();
  const { ladder, base } = loaded;
  const page = ladderPage(ladder, loaded.people);
  const mayEdit = may(actor.role, 'edit-ladders');
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <LadderHead ladder={ladder} people={page.people} />
      {mayEdit ? (
        <LadderActs
          ladder={ladder}
          base={base}
          parts={partChoices(loaded.outline)}
          rungs={page.rungs.map(({ id, name, mark }) => ({ id, name: `${name}, ${mark}` }))}
        />
      ) : null}
      {page.rungs.length === 0 ? (
        <p className={forms.lead}>
          This ladder has no rung in use. Add the easiest form of the drill first, then the next harder one.
        </p>
      ) : (
        <RungRows ladderId={ladder.id} rungs={page.rungs} mayEdit={mayEdit} />
      )}
      <Openings lines={openingLines(ladder, loaded.openingNames)} />
      <RetiredRungs ladderId={ladder.id} base={base} rungs={page.retired} mayEdit={mayEdit} />
      {loaded.changes.length > 0 ? (
        <details>
          <summary>Changes of this ladder</summary>
          <ul>
            {loaded.changes.map((change) => (
              <li key={`${change.at.toISOString()} ${change.fields.join()}`}>{saidChange(change)}</li>
            ))}
          </ul>
        </details>
      ) : null}
      <p className={styles.back}>
        <Link href="/ladders">Back to Ladders</Link>
      </p>
    </main>
  );
}
