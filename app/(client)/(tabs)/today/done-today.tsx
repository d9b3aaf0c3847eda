import Link from 'next/link';
import type { DoneCheckIn } from '#lib/usecases/load-today.ts';
import { checkInInWords } from '#lib/views/phone-earlier.ts';
import { CoachWords } from '../../_phone/coach-words.tsx';

type Props = { done: DoneCheckIn[]; zone: string; now: Date };

/** Check-ins of today that have arrived; each can be corrected, and says what coaches wrote on it. */
export function DoneToday({ done, zone, now }: Props) {
  return done.map(({ checkIn, said, seen }) => (
    <div key={checkIn.id}>
      <p className="between">
        <span>{checkInInWords(checkIn)}: kept.</span>
        <Link className="word-act" href={`/check-in?correct=${checkIn.id}`} prefetch={false}>
          Correct it
        </Link>
      </p>
      <CoachWords said={said} seen={seen} zone={zone} now={now} />
    </div>
  ));
}
