'use client';
import type { PhoneDrill } from '#lib/views/phone-session.ts';
import { ALL_THE_SAME } from '../_phone/swaps.ts';

type Props = {
  drill: PhoneDrill;
  /** The swap taken by its place, -1 the drill all the same, undefined nothing yet. */
  choice: number | undefined;
  onChoose: (choice: number | null) => void;
  children: React.ReactNode;
};

/** A drill that a limit rules out: struck through, with its swaps to take by one tap. `children`: the sets of the choice. */
export function LimitedDrill({ drill, choice, onChoose, children }: Props) {
  const swaps = drill.limit?.swaps ?? [];
  return (
    <section className="drill ruled-out" aria-label={`${drill.title}, ruled out by your limits`}>
      <h2>
        <s>{drill.title}</s> <span className="quiet">{sidesOf(drill)}</span>
      </h2>
      <p className="quiet small">{drill.limit?.words}</p>
      {choice === undefined ? (
        <>
          {swaps.map((swap, at) => (
            <button key={swap.key} type="button" className="act" onClick={() => onChoose(at)}>
              <span>
                Instead: {swap.title} <small>{swap.sides[0]?.dose}</small>
              </span>
            </button>
          ))}
          {swaps.length === 0 ? <p className="quiet small">Nothing instead: leave it out.</p> : null}
          <button type="button" className="word-act" onClick={() => onChoose(ALL_THE_SAME)}>
            I did it all the same
          </button>
        </>
      ) : (
        <>
          {children}
          <button type="button" className="word-act" onClick={() => onChoose(null)}>
            {choice === ALL_THE_SAME ? 'I left it out' : 'Not this one'}
          </button>
        </>
      )}
    </section>
  );
}

function sidesOf({ sides }: PhoneDrill): string {
  const [only] = sides;
  return sides.length === 1 && only && only.side !== 'both' ? only.side : '';
}
