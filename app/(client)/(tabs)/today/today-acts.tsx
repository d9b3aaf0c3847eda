import Link from 'next/link';
import { placeInWords } from '#lib/domain/labels.ts';
import type { MorningQuestion } from '#lib/views/phone-morning.ts';

/** What can be told today, each by one tap. */
export function TodayActs({ morning }: { morning: MorningQuestion | null }) {
  return (
    <>
      <div className="today-act">
        <Link className="act act-filled" href="/check-in" prefetch={false}>
          Check in
        </Link>
        {morning ? (
          <Link className="act" href="/rest-day?about=morning" prefetch={false}>
            <span>
              How is it this morning? <small>{aboutMorning(morning)}</small>
            </span>
          </Link>
        ) : null}
      </div>
      <div className="word-acts centre">
        <Link className="word-act" href="/rest-day" prefetch={false}>
          No training today
        </Link>
        <Link className="word-act" href="/rest-day?about=pain" prefetch={false}>
          It hurts today
        </Link>
        <Link className="word-act" href="/away" prefetch={false}>
          Away or ill
        </Link>
        <Link className="word-act" href="/earlier" prefetch={false}>
          Earlier check-ins
        </Link>
      </div>
    </>
  );
}

function aboutMorning({ places: [worst] }: MorningQuestion): string {
  return worst ? placeInWords(worst.region, worst.side) : 'after much more than usual';
}
