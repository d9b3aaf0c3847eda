import Link from 'next/link';
import type { StartOfToday } from '#lib/usecases/intake/start-of-today.ts';

type Props = { start: StartOfToday; coach: string };

/** What comes before the first training: a parent's yes under 18, and the questions of the start. */
export function BeforeTraining({ start, coach }: Props) {
  return (
    <>
      {start.guardian ? (
        <section className="before-training" aria-label="Before training begins">
          <h2>Training does not begin yet</h2>
          <p>
            You are under 18, so {start.guardian} has to agree first, by a link of their own. {coach} sends
            it. Until then there is no plan here. You can still tell how you are.
          </p>
        </section>
      ) : null}
      {start.intake ? (
        <section className="before-training" aria-label="Before you start">
          <h2>Before you start</h2>
          <p>{coach} asks about your health, your training and what you want. It takes about ten minutes.</p>
          <Link className="act act-filled" href="/intake" prefetch={false}>
            {start.intake === 'begun' ? 'Go on where you were' : 'Begin: ten minutes'}
          </Link>
        </section>
      ) : null}
    </>
  );
}
