import Link from 'next/link';
import type { Today } from '#lib/usecases/load-today.ts';

/** Films that are asked for of drills that do not stand in today's session. */
export function OtherFilms({ today }: { today: Pick<Today, 'films' | 'sessions'> }) {
  const [session] = today.sessions;
  const beside = new Set(session?.drills.flatMap((drill) => drill.sides.map(({ rungId }) => rungId)));
  const others = today.films.filter(({ rungId }) => !beside.has(rungId)).length;
  if (others === 0) return null;
  return (
    <Link className="film-beside" href="/films" prefetch={false}>
      {others === 1 ? 'One film is asked for' : `${others} films are asked for`} of drills that are not in
      this session.
    </Link>
  );
}
