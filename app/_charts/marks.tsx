'use client';

type Place = { cx?: number | undefined; cy?: number | undefined };

/** A point: hollow or filled, round or square; form carries what colour repeats. */
export function Mark({
  cx,
  cy,
  colour,
  hollow = false,
  square = false,
  size = 4,
}: Place & { colour: string; hollow?: boolean; square?: boolean; size?: number }) {
  if (cx === undefined || cy === undefined || Number.isNaN(cy)) return null;
  const look = { fill: hollow ? 'var(--paper)' : colour, stroke: colour, strokeWidth: 2 };
  return square ? (
    <rect x={cx - size} y={cy - size} width={2 * size} height={2 * size} {...look} />
  ) : (
    <circle cx={cx} cy={cy} r={size} {...look} />
  );
}
