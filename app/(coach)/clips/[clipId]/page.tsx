import Link from 'next/link';
import { notFound } from 'next/navigation';
import { after } from 'next/server';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { clipAddress } from '#lib/schemas/clip.ts';
import { loadLooking } from '#lib/usecases/looking/load-looking.ts';
import { noteRead } from '#lib/usecases/rights/note-read.ts';
import forms from '../../clients/_parts/forms.module.css';
import { FilmHead } from './_parts/film-head.tsx';
import styles from './_parts/looking.module.css';
import { Looking } from './_parts/looking.tsx';
import { StillsOfFilm } from './_parts/stills-of-film.tsx';

export const metadata = { title: 'Looking' };

/** One film, looked at slowly: what its sets look like, words at its moments, stills of it. */
export default async function LookingPage({ params }: { params: Promise<unknown> }) {
  const actor = await requireActor('see-clients');
  const address = clipAddress.safeParse(await params);
  const looking = address.success ? await loadLooking(actor, address.data.clipId, now()) : undefined;
  if (!looking) notFound();
  const { clip, sets, first, faults, words, stills, others } = looking;
  after(() => noteRead(actor, clip.clientId, 'film', now()));
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <FilmHead looking={looking} />
      {clip.state === 'ready' ? (
        <Looking
          clipId={clip.id}
          label={`Film of ${clip.client}: ${clip.rung}`}
          known={{ fps: clip.fps, seconds: clip.seconds, width: clip.width, height: clip.height }}
          others={others}
          judged={{
            sets,
            first,
            faults,
            clean: clip.clean,
            looked: looking.looked,
            hasWords: words.length > 0,
          }}
          said={{ client: clip.client, words }}
          mayTake={may(actor.role, 'edit-clients')}
        />
      ) : (
        <p className={forms.refusal}>{looking.notHere}</p>
      )}
      <StillsOfFilm stills={stills} />
      <p className={`${forms.hint} ${styles.foot}`}>
        It says what is seen in the picture, not what is wrong with the person; nothing here is a diagnosis.
        Pain, numbness or weakness is for a licensed clinician.{' '}
        <Link href={`/clients/${clip.clientId}`}>Back to {clip.client}</Link>
      </p>
    </main>
  );
}
