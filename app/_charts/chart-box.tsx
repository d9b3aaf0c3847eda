'use client';

import type { ReactElement } from 'react';
import { ResponsiveContainer } from 'recharts';

/** Width before the browser has measured: the plot of a 1280 px window. */
const FIRST_WIDTH = 690;

/** A chart as one picture for assistive technology: its summary is what it says, the table stands beside it. */
export function ChartBox({
  summary,
  height,
  children,
}: {
  summary: string;
  height: number;
  children: ReactElement;
}) {
  return (
    <div role="img" aria-label={summary} style={{ height }}>
      <ResponsiveContainer width="100%" height={height} initialDimension={{ width: FIRST_WIDTH, height }}>
        {children}
      </ResponsiveContainer>
    </div>
  );
}
