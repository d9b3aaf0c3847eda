import Link from 'next/link';
import type { Today } from '#lib/usecases/load-today.ts';
import { momentAsSaid } from '#lib/views/phone-dates.ts';

/** The newest words or answer, where they do not stand at a check-in of today already, and the last look. */
export function LastFromCoach({ today, now }: { today: Today; now: Date }) {
  const { client, said, seen, done } = today;
  const shown = done.some((one) => one.said.some((word) => word.id === said?.id));
  return (
    <>
      {said && !shown ? (
        <section className="said">
          <hr className="rule" />
          {said.on ? <p className="quiet">On {said.on}</p> : null}
          {said.film ? (
            <p className="quiet">
              <Link className="word-act" href={`/films/${said.film.clipId}`}>
                On your film: {said.film.rung}
              </Link>
            </p>
          ) : null}
          <blockquote>“{said.text}”</blockquote>
          <p className="quiet">
            {said.by}, {momentAsSaid(said.at, client.zone, now)}
          </p>
        </section>
      ) : null}
      {seen && !done.some((one) => one.seen) ? (
        <p className="quiet">
          seen by {seen.by}, {momentAsSaid(seen.at, client.zone, now)}
        </p>
      ) : null}
    </>
  );
}
