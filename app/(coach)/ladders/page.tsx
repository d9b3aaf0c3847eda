import Link from 'next/link';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadLadders } from '#lib/usecases/load-ladders.ts';
import { ladderList } from '#lib/views/ladders/ladder-list.ts';
import forms from '../clients/_parts/forms.module.css';
import { Shelves } from './_parts/shelves.tsx';

export const metadata = { title: 'Ladders' };

/** The team's own skills, parts and ladders. */
export default async function LaddersPage() {
  const actor = await requireActor('see-ladders');
  const { outline, people } = await loadLadders(actor, now());
  const list = ladderList(outline, people);
  const mayEdit = may(actor.role, 'edit-ladders');
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>Ladders</h1>
      <p className={forms.lead}>
        {list.ladders === 0
          ? 'The ladders of this team will stand here. Add a skill and its parts, then the first ladder.'
          : `${list.ladders} ladders, this team’s own. A change is for every coach and client of the team, and says first whom it touches.`}
      </p>
      <Shelves
        list={list}
        mayEdit={mayEdit}
        newLadder={
          mayEdit && list.skills.some((skill) => skill.parts.length > 0) ? (
            <Link href="/ladders/new" className={forms.main}>
              New ladder
            </Link>
          ) : null
        }
      />
    </main>
  );
}
