import { counted } from '#lib/checks/words.ts';
import type { SidesOfRung } from '#lib/views/phone-sides.ts';
import { TwoBars } from './two-bars.tsx';

/** Both sides of each rung that is done on each side. */
export function LeftAndRight({ sides }: { sides: SidesOfRung[] }) {
  if (sides.length === 0) return null;
  return (
    <section className="ladder-block">
      <h2>Left and right</h2>
      {sides.map(({ rungId, rung, left, right, unit, days }) => (
        <div key={rungId} className="two-bars-of">
          <div>{rung}</div>
          <TwoBars
            left={{ label: 'left', value: left }}
            right={{ label: 'right', value: right }}
            unit={unit}
          />
          <p className="quiet">{counted(days, 'day')} with both sides</p>
        </div>
      ))}
    </section>
  );
}
