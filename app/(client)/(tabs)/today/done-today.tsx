import Link from 'next/link';
import type { HistoryCheckIn } from '#lib/domain/history.ts';

/** Check-ins of today that have arrived; each can be corrected. */
export function DoneToday({ done }: { done: HistoryCheckIn[] }) {
  return done.map((checkIn) => (
    <p key={checkIn.id} className="between">
      <span>{inWords(checkIn)}</span>
      <Link className="word-act" href={`/check-in?correct=${checkIn.id}`} prefetch={false}>
        Correct it
      </Link>
    </p>
  ));
}

function inWords(checkIn: HistoryCheckIn): string {
  if (checkIn.kind === 'rest') return 'No training today: kept.';
  const name = checkIn.session ? `Session ${checkIn.session}` : 'Training';
  const minutes = checkIn.minutes === null ? '' : `, ${checkIn.minutes} min`;
  const effort = checkIn.effort === null ? '' : `, effort ${checkIn.effort}`;
  return `${name}${minutes}${effort}: kept.`;
}
