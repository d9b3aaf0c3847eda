const STEP = 9;

/** Two stiles; rungs are solid up to the one the client stands on. The words beside it say the same. */
export function DrawnLadder({ number, of }: { number: number; of: number }) {
  const height = (of + 1) * STEP;
  const rungs = Array.from({ length: of }, (_, at) => at + 1);
  return (
    <svg width="28" height={height} viewBox={`0 0 28 ${height}`} aria-hidden="true">
      <path d={`M4 0V${height}M24 0V${height}`} stroke="var(--edge)" strokeWidth="1.5" />
      {rungs.map((rung) => {
        const y = height - rung * STEP;
        const isReached = rung <= number;
        return (
          <path
            key={rung}
            d={`M4 ${y}H24`}
            stroke={isReached ? 'var(--ink)' : 'var(--edge)'}
            strokeWidth={rung === number ? 4 : isReached ? 2 : 1}
            strokeDasharray={isReached ? undefined : '2 3'}
          />
        );
      })}
    </svg>
  );
}
