import Link from 'next/link';
import { Stills } from '#app/_ui/stills.tsx';
import type { Waiting } from '#lib/views/board-types.ts';

type Props = { list: Waiting[]; starting?: boolean };

/** The people of a fold, each with why; of those who start, their start beside it. */
export function FoldList({ list, starting = false }: Props) {
  return (
    <ul>
      {list.map((one) => (
        <li key={one.clientId}>
          <Link href={`/clients/${one.clientId}`} prefetch={false}>
            {one.name}
          </Link>{' '}
          <span>{one.words}</span>
          {starting ? (
            <>
              {' '}
              <Link
                href={`/clients/${one.clientId}/start`}
                prefetch={false}
                aria-label={`Start of ${one.name}`}
              >
                Start
              </Link>
            </>
          ) : null}
          <Stills ids={one.stills ?? []} place />
        </li>
      ))}
    </ul>
  );
}
