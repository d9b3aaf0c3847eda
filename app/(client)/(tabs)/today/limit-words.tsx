import type { DrillLimit, PhoneDrill } from '#lib/views/phone-session.ts';

/** Under a drill: which limit holds, and what may be done instead. */
export function LimitWords({ limit }: { limit: DrillLimit }) {
  const [first, ...others] = limit.swaps;
  return (
    <>
      <div className="quiet small">{limit.words}</div>
      {limit.out && first ? (
        <div>
          Instead: <strong>{first.title}</strong> <span className="quiet">{doseOf(first)}</span>
          {others.length > 0 ? (
            <span className="quiet small"> or {others.map(titleOf).join(', ')}</span>
          ) : null}
        </div>
      ) : null}
      {limit.out && !first ? <div className="quiet small">Nothing instead: leave it out.</div> : null}
    </>
  );
}

/** The client's limits, said once above the plan. */
export function YourLimits({ limits }: { limits: string[] }) {
  if (limits.length === 0) return null;
  return (
    <section className="your-limits" aria-label="Your limits">
      <strong>Your limits</strong>
      <ul>
        {limits.map((limit) => (
          <li key={limit}>{limit}</li>
        ))}
      </ul>
    </section>
  );
}

function doseOf({ sides }: PhoneDrill): string {
  const [first] = sides;
  if (!first) return '';
  return sides.length > 1 ? `${first.dose} left and right` : first.dose;
}

function titleOf({ title }: PhoneDrill): string {
  return title;
}
