'use client';
import type { Caution } from '#lib/domain/caution.ts';
import { NowTile } from '../_phone/icons.tsx';

type Props = { cautions: Caution[]; coach: string; isSent?: boolean };

/** Read out at once by screen readers; says what to stop, whom to see, and when the coach hears of it. */
export function CautionBox({ cautions, coach, isSent = false }: Props) {
  return (
    <div role="alert">
      {cautions.map((caution) => (
        <section key={caution.title} className="caution">
          <h2>
            <NowTile /> {caution.title}
          </h2>
          <p>{caution.text}</p>
        </section>
      ))}
      {cautions.length > 0 ? (
        <p className="quiet" style={{ margin: '8px 0' }}>
          Plumbline does not diagnose.{' '}
          {isSent ? `${coach} has been told.` : `${coach} is told as soon as it is sent.`}
        </p>
      ) : null}
    </div>
  );
}
