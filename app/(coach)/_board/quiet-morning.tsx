import Link from 'next/link';
import type { ReactNode } from 'react';
import { addDays } from '#lib/domain/local-date.ts';
import type { BoardView } from '#lib/views/board-types.ts';
import { laterWords } from '#lib/views/night-so-far.ts';
import { longDate } from '#lib/views/say-date.ts';
import styles from './board.module.css';
import { NightWords } from './night-words.tsx';

type Quiet = Omit<BoardView, 'groups'>;

/** The board without a row. Each way of being empty says which one it is. */
export function QuietMorning({ board }: { board: Quiet }) {
  const words = WORDS[board.state];
  return (
    <div className={styles.quiet}>
      <div className={styles.head}>
        <span />
        <NightWords night={board.night} />
      </div>
      <h1>
        {board.day}.<br />
        {words?.title}
      </h1>
      <p className={styles.say}>{words?.say(board)}</p>
      {board.state !== 'no-clients' && <Facts board={board} />}
    </div>
  );
}

type Words = { title: string; say: (board: Quiet) => ReactNode };

const WORDS: Partial<Record<BoardView['state'], Words>> = {
  'nothing-new': { title: 'Nothing to answer this morning.', say: nothingNew },
  'night-running': { title: 'The night is not finished.', say: notFinished },
  'night-failed': {
    title: 'The night failed.',
    say: (board) => (
      <>
        None of {board.night?.due ?? 0} clients could be checked. Every check-in is kept, and what stood here
        yesterday still stands. <Link href="/nights">See what happened and run it again</Link>.
      </>
    ),
  },
  'no-clients': {
    title: 'No clients yet.',
    say: () => (
      <>
        Once a client trains and checks in, this page says each morning whom to open first, and why.{' '}
        <Link href="/clients">Make the first client</Link>.
      </>
    ),
  },
};

/** What the checks looked at and when: never more than they know. */
function nothingNew(board: Quiet): string {
  const { night, clients, nothingNew: quiet, gettingToKnow } = board;
  const others = [
    gettingToKnow.length > 0 &&
      `${gettingToKnow.length} ${gettingToKnow.length === 1 ? 'has' : 'have'} too few known days to judge`,
    board.notChecked.length > 0 &&
      `${board.notChecked.length} ${board.notChecked.length === 1 ? 'was' : 'were'} not checked`,
  ].filter((words) => words !== false);
  const more = others.length > 0 ? `; ${others.join('; ')}` : '';
  return `The checks found nothing new for ${quiet.length} of ${clients} clients${more}.${howFar(night)}`;
}

function howFar(night: Quiet['night']): string {
  if (!night) return '';
  const later = laterWords(night.later);
  const ended = night.endedAt ? `The night ended ${night.endedAt}, ` : '';
  return ` ${ended}${night.done} of ${night.due} checked${later && `; ${later}`}.`;
}

function notFinished({ night }: Quiet): ReactNode {
  if (!night)
    return 'No night has run yet. Each client is checked at 03:00 of their own time; danger signs and pain of 6 or more come at once.';
  if (night.late)
    return (
      <>
        The night of {longDate(addDays(night.localDate, 1))} should have begun by now and has not. What is
        owed is not lost: it runs when the worker does. <Link href="/nights">See what is owed</Link>.
      </>
    );
  return `${night.done} of ${night.due} clients are checked so far. Nothing of theirs is new; the rest comes by itself. This page says when it has.`;
}

function Facts({ board }: { board: Quiet }) {
  const facts = [
    { word: 'Put aside', says: namesOf(board.aside) },
    { word: 'With the client', says: namesOf(board.withClient) },
    { word: 'Too little known', says: namesOf(board.gettingToKnow) },
    { word: 'Not checked', says: namesOf(board.notChecked) },
  ];
  return (
    <dl className={styles.facts}>
      {facts.map(({ word, says }) => (
        <div key={word}>
          <dt>{word}</dt>
          <dd>{says}</dd>
        </div>
      ))}
    </dl>
  );
}

const NAMES_SHOWN = 3;

function namesOf(list: { name: string }[]): string {
  if (list.length === 0) return 'nobody';
  const names = list.slice(0, NAMES_SHOWN).map((one) => one.name);
  const more = list.length > NAMES_SHOWN ? ` and ${list.length - NAMES_SHOWN} more` : '';
  return `${list.length === 1 ? '1 client' : `${list.length} clients`}: ${names.join(', ')}${more}`;
}
