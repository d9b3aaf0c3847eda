import Link from 'next/link';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { checkInInWords } from '#lib/views/phone-earlier.ts';

/** Check-ins of today that have arrived; each can be corrected. */
export function DoneToday({ done }: { done: HistoryCheckIn[] }) {
  return done.map((checkIn) => (
    <p key={checkIn.id} className="between">
      <span>{checkInInWords(checkIn)}: kept.</span>
      <Link className="word-act" href={`/check-in?correct=${checkIn.id}`} prefetch={false}>
        Correct it
      </Link>
    </p>
  ));
}
