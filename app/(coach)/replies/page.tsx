import type { Metadata } from 'next';
import { TheLine } from '#app/_ui/the-line.tsx';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { repliesFilter } from '#lib/schemas/reply.ts';
import { loadWaitingFilms } from '#lib/usecases/film/load-waiting-films.ts';
import { loadReplies } from '#lib/usecases/load-replies.ts';
import { answeringInWords } from '#lib/views/replies/answering-words.ts';
import { repliesHeadline } from '#lib/views/replies/replies-headline.ts';
import { BoardKeys } from '../_board/board-keys.tsx';
import { EarlierList } from './_parts/earlier-list.tsx';
import { HoursForm } from './_parts/hours-form.tsx';
import styles from './_parts/replies.module.css';
import { RepliesNav } from './_parts/replies-nav.tsx';
import { SearchForm } from './_parts/search-form.tsx';
import { WaitingFilms } from './_parts/waiting-films.tsx';
import { WaitingGroups } from './_parts/waiting-groups.tsx';

export const metadata: Metadata = { title: 'Replies and films' };

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> };

export default async function RepliesPage({ searchParams }: Props) {
  const actor = await requireActor('see-clients');
  const filter = repliesFilter.parse(await searchParams);
  const { waiting, more, answering, zone, kept, found } = await loadReplies(actor, filter, now());
  const mine = filter.coach === 'mine';
  const films = await loadWaitingFilms(actor, mine ? 'mine' : 'all', now());
  return (
    <main id="main" tabIndex={-1} className={styles.page}>
      <div className={styles.head}>
        <h1>{repliesHeadline(waiting, more)}</h1>
        <p className={styles.counted}>
          Answering hours: {answeringInWords(answering)}. Words of a danger sign count round the clock.{' '}
          {mine ? <a href="/replies">All clients</a> : <a href="/replies?coach=mine">My clients only</a>}
        </p>
        <RepliesNav here="/replies" />
      </div>
      <WaitingGroups
        waiting={waiting}
        kept={kept}
        canAnswer={may(actor.role, 'prepare-acts')}
        canSee={may(actor.role, 'act-on-reasons')}
      />
      {waiting.length === 0 && (
        <p className={styles.empty}>
          Questions that clients ask on their phones stand here until they are answered.
        </p>
      )}
      <WaitingFilms films={films} />
      {more > 0 && <p>{more} more follow as these are answered.</p>}
      {waiting.length > 0 && (
        <div className={styles.keys}>
          <BoardKeys page="replies" />
        </div>
      )}
      <section className={styles.section} aria-labelledby="earlier">
        <h2 id="earlier">Earlier answers</h2>
        <SearchForm find={filter.find} mine={mine} />
        {found?.length === 0 && <p>No earlier answer holds all of these words, in any of their forms.</p>}
        <EarlierList answers={found ?? []} keep={may(actor.role, 'write-to-clients')} />
      </section>
      {may(actor.role, 'manage-team') && (
        <section className={styles.section} aria-labelledby="hours">
          <h2 id="hours">Answering hours of the team</h2>
          <p className={styles.lead}>
            Waiting counts inside these hours, on this page and for the check “question waiting”.
          </p>
          <HoursForm
            answering={answering ?? null}
            zone={zone}
            zones={['UTC', ...Intl.supportedValuesOf('timeZone')]}
          />
        </section>
      )}
      <TheLine />
    </main>
  );
}
