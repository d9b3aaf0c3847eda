import type { DrillLimit, PhoneDrill } from '#lib/views/phone-session.ts';

/** Under a drill: which limit holds, and what may be done instead. */
export function LimitWords({ limit }: { limit: DrillLimit }) {
  const [first, ...others] = limit.swaps;
  return (
    <>
      <div className="quiet small">{limit.words}</div>
      {limit.out && first ? (
        <div className="instead">
          Instead: <strong>{first.title}</strong> <Dose drill={first} />
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

function Dose({ drill }: { drill: PhoneDrill }) {
  return (
    <span className="quiet">
      <span className="dose">{drill.sides[0]?.dose}</span>
      {drill.sides.length > 1 ? ' left and right' : ''}
    </span>
  );
}

function titleOf({ title }: PhoneDrill): string {
  return title;
}
