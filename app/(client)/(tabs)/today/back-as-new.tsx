import Link from 'next/link';

type Props = { isBack: boolean; hasTests: boolean; coach: string };

/** The first days after twelve weeks or more away: what begins anew, what is kept, what to tell. */
export function BackAsNew({ isBack, hasTests, coach }: Props) {
  if (!isBack) return null;
  return (
    <section className="before-training" aria-label="Back after a break">
      <h2>Welcome back</h2>
      <p>
        You were away for twelve weeks or more, so you start again like new: easy, and from start tests.
        {hasTests ? '' : ` ${coach} sends them.`} What you did before is kept.
      </p>
      <p>
        Something new about your health, an operation, an injury?{' '}
        <Link href="/answers" prefetch={false}>
          Tell {coach} before you train
        </Link>
        .
      </p>
    </section>
  );
}
