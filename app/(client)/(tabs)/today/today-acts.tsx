import Link from 'next/link';

/** What can be told today, each by one tap; what is told on most days stays in view. */
export function TodayActs() {
  return (
    <>
      <div className="today-act">
        <Link className="act act-filled" href="/check-in" prefetch={false}>
          Check in
        </Link>
        <div className="word-acts centre">
          <Link className="word-act" href="/rest-day" prefetch={false}>
            No training today
          </Link>
          <Link className="word-act" href="/rest-day?about=pain" prefetch={false}>
            It hurts today
          </Link>
        </div>
      </div>
      <div className="word-acts centre">
        <Link className="word-act" href="/away" prefetch={false}>
          Away or ill
        </Link>
        <Link className="word-act" href="/earlier" prefetch={false}>
          Earlier check-ins
        </Link>
        <Link className="word-act" href="/films" prefetch={false}>
          Films
        </Link>
      </div>
    </>
  );
}
