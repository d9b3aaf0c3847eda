import { counted } from '#lib/checks/words.ts';
import { asSentence } from '#lib/domain/labels.ts';
import type { WindowEdges } from '#lib/views/phone-edges.ts';
import { TwoBars } from './two-bars.tsx';

/** How long each edge of the balance is held. Nothing when neither was trained. */
export function BalanceWindow({ edges }: { edges: WindowEdges[] }) {
  const [first] = edges;
  if (!first) return null;
  return (
    <section className="ladder-block">
      <h2>My balance window</h2>
      <p className="quiet">The middle of the best clean hold of each day, over {first.withinDays} days.</p>
      {edges.map(({ name, heel, toe }) => (
        <div key={name}>
          {name ? <div>{asSentence(name)}</div> : null}
          <TwoBars
            left={{ label: 'toe pulls', value: toe?.seconds ?? 0 }}
            right={{ label: 'heel pulls', value: heel?.seconds ?? 0 }}
            unit="s"
          />
          <p className="quiet">
            toe pulls on {counted(toe?.days ?? 0, 'day')}, heel pulls on {counted(heel?.days ?? 0, 'day')}
          </p>
        </div>
      ))}
    </section>
  );
}
