import Link from 'next/link';
import type { Looking } from '#lib/usecases/looking/load-looking.ts';
import forms from '../../../clients/_parts/forms.module.css';

/** Whose film it is, what it shows, and what was asked. */
export function FilmHead({ looking }: { looking: Looking }) {
  const { clip, about } = looking;
  return (
    <>
      <h1>
        {clip.rung}
        {clip.side === 'both' ? '' : `, ${clip.side}`}
      </h1>
      <p className={forms.lead}>
        <Link href={`/clients/${clip.clientId}`}>{clip.client}</Link>, {about}
        {clip.asked && (
          <>
            {' '}
            You asked: <q dir="auto">{clip.asked}</q>
          </>
        )}
      </p>
    </>
  );
}
