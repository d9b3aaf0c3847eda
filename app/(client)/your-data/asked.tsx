import Link from 'next/link';
import { longDate } from '#lib/views/say-date.ts';

type Props = { asked: { dueAt: Date; receipt: string; origin: string; by: string | null }; coach: string };

/** A deletion that is on its way: when, by whom, and the way back. */
export function Asked({ asked, coach }: Props) {
  const day = longDate(asked.dueAt.toISOString().slice(0, 10));
  const who =
    asked.origin === 'lead'
      ? `${asked.by ?? coach} asked for it.`
      : asked.origin === 'guardian'
        ? 'Your parent or guardian asked for it.'
        : 'You asked for it.';
  return (
    <section className="problem" aria-label="Deletion">
      <p>
        <b>Everything of yours is deleted on {day}.</b> {who} Receipt{' '}
        <Link href={`/receipt/${asked.receipt}`} prefetch={false}>
          {asked.receipt}
        </Link>
      </p>
      <form action="/api/your-data/erasure/take-back" method="post">
        <button type="submit" className="word-act">
          Take it back: keep my record
        </button>
      </form>
    </section>
  );
}
