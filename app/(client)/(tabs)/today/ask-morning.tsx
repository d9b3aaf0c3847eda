import Link from 'next/link';
import { placeInWords } from '#lib/domain/labels.ts';
import type { MorningQuestion } from '#lib/views/phone-morning.ts';

/** On the morning after: one tap to say how it is. */
export function AskMorning({ morning }: { morning: MorningQuestion | null }) {
  if (!morning) return null;
  const [worst] = morning.places;
  return (
    <Link className="act ask-morning" href="/rest-day?about=morning" prefetch={false}>
      <span>
        How is it this morning?{' '}
        <small>{worst ? placeInWords(worst.region, worst.side) : 'after much more than usual'}</small>
      </span>
    </Link>
  );
}
