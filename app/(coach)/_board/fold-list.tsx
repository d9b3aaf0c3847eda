import Link from 'next/link';
import { Stills } from '#app/_ui/stills.tsx';
import type { Waiting } from '#lib/views/board-types.ts';

/** The people of a fold, each with why. */
export function FoldList({ list }: { list: Waiting[] }) {
  return (
    <ul>
      {list.map((one) => (
        <li key={one.clientId}>
          <Link href={`/clients/${one.clientId}`} prefetch={false}>
            {one.name}
          </Link>{' '}
          <span>{one.words}</span>
          <Stills ids={one.stills ?? []} place />
        </li>
      ))}
    </ul>
  );
}
