import Link from 'next/link';
import { addDays } from '#lib/domain/local-date.ts';
import type { BoardNight } from '#lib/views/board-types.ts';
import { isDoneSoFar, laterWords } from '#lib/views/night-so-far.ts';
import { exactDate, longDate } from '#lib/views/say-date.ts';
import styles from './board.module.css';

/** When the last night ended, how many it checked, what failed. What is wrong is a link to the page about nights. */
export function NightWords({ night }: { night: BoardNight | null }) {
  if (!night)
    return (
      <p className={styles.night}>No night has run yet. The first one is at 03:00, each client’s own time.</p>
    );
  const soFar = isDoneSoFar(night);
  const later = laterWords(night.later);
  return (
    <p className={styles.night}>
      {(night.unfinishedAtSix ?? 0) > 0 && (
        <>
          <b>Not finished at 06:00</b> where they live for{' '}
          <Link href="/nights">
            {night.unfinishedAtSix === 1 ? '1 client' : `${night.unfinishedAtSix} clients`}
          </Link>
          .{' '}
        </>
      )}
      {night.late && (
        <>
          <Link href="/nights">The night of {longDate(addDays(night.localDate, 1))} has not run</Link>; the
          one before:{' '}
        </>
      )}
      {night.endedAt ? (
        <>
          <span title={exactDate(night.endedOn ?? night.localDate)}>Night run ended</span>{' '}
          <b>{night.endedAt}</b>.{' '}
        </>
      ) : (
        !soFar && 'The night run is not finished. '
      )}
      {night.done === night.due
        ? `All ${night.due} clients checked`
        : `${night.done} of ${night.due} clients checked`}
      {later && `, ${later}`}
      {night.failed > 0 ? (
        <>
          , <Link href="/nights">{night.failed}&nbsp;failed</Link>.
        </>
      ) : (
        ', none failed.'
      )}
    </p>
  );
}
