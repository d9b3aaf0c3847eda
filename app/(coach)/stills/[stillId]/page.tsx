import Link from 'next/link';
import { notFound } from 'next/navigation';
import { after } from 'next/server';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { stillAddress } from '#lib/schemas/question.ts';
import { noteRead } from '#lib/usecases/rights/note-read.ts';
import { loadStillPage } from '#lib/usecases/stills/load-still-page.ts';
import { filmSecond } from '#lib/views/looking/film-second.ts';
import { exactDate } from '#lib/views/say-date.ts';
import forms from '../../clients/_parts/forms.module.css';
import { PlaceJoints } from './_parts/place-joints.tsx';

export const metadata = { title: 'Still' };

type Props = { params: Promise<unknown>; searchParams: Promise<{ frame?: string | string[] }> };

/** Joints placed on a still, and what the geometry of them says. */
export default async function StillPage({ params, searchParams }: Props) {
  const actor = await requireActor('see-clients');
  const address = stillAddress.safeParse(await params);
  const loaded = address.success ? await loadStillPage(actor, address.data.stillId) : undefined;
  if (!address.success || !loaded) notFound();
  const { stillId } = address.data;
  const { client, size, frames, film } = loaded;
  after(() => noteRead(actor, client.id, 'picture', now()));
  const { frame } = await searchParams;
  const opened = frames.find(
    ({ id, stillId: on }) => on === stillId && (frame === undefined || id === frame),
  );
  return (
    <main id="main" tabIndex={-1} className={forms.page}>
      <h1>Still of {client.name}</h1>
      <p className={forms.lead}>
        Place the joints, the ends of the hand and a line that hangs straight. It says where the points are,
        with the error that placing brings, and nothing about the person: nothing here is a diagnosis.{' '}
        {film && (
          <>
            Taken <Link href={`/clips/${film.clipId}`}>from the film of {exactDate(film.filmedOn)}</Link> at{' '}
            {filmSecond(film.atSeconds)}.{' '}
          </>
        )}
        <Link href={`/clients/${client.id}`}>Back to {client.name}</Link>
      </p>
      <PlaceJoints
        key={String(frame ?? 'newest')} // one that was just kept takes nothing from under the hand
        stillId={stillId}
        size={size}
        start={opened ?? null}
        mayKeep={may(actor.role, 'edit-clients')}
        frames={frames.map((one) => ({
          ...one,
          at: one.at.toISOString(),
          date: exactDate(localDateOf(one.at, client.zone)),
        }))}
      />
    </main>
  );
}
