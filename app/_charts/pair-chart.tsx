'use client';

import { Line, LineChart, ReferenceLine, XAxis, YAxis } from 'recharts';
import type { PairPanel } from '#lib/views/client-pairs.ts';
import { ChartBox } from './chart-box.tsx';
import { Mark } from './marks.tsx';

type Dot = { cx?: number; cy?: number; index?: number };

/** Left hollow, right filled, joined by an upright stroke whose length is the gap. The axis starts at zero. */
export function PairChart({ panel, height, days }: { panel: PairPanel; height: number; days: number }) {
  return (
    <ChartBox summary={panel.summary} height={height}>
      <LineChart
        data={panel.pairs}
        margin={{ top: 0, right: 0, bottom: 1, left: 0 }}
        accessibilityLayer={false}
      >
        <XAxis hide type="number" dataKey="at" domain={[0, days]} allowDataOverflow />
        <YAxis hide type="number" domain={[0, panel.top]} />
        {panel.ticks.map((tick) => (
          <ReferenceLine
            key={tick.value}
            y={tick.value}
            stroke={tick.value === 0 ? 'var(--edge)' : 'var(--rule)'}
          />
        ))}
        {panel.pairs.map((pair) => (
          <ReferenceLine
            key={pair.at}
            segment={[
              { x: pair.at, y: pair.left },
              { x: pair.at, y: pair.right },
            ]}
            stroke="var(--ink3)"
          />
        ))}
        <Line
          dataKey="right"
          stroke="none"
          isAnimationActive={false}
          dot={({ cx, cy, index }: Dot) => <Mark key={index} cx={cx} cy={cy} colour="var(--right)" />}
        />
        <Line
          dataKey="left"
          stroke="none"
          isAnimationActive={false}
          dot={({ cx, cy, index }: Dot) => <Mark key={index} cx={cx} cy={cy} colour="var(--left)" hollow />}
        />
      </LineChart>
    </ChartBox>
  );
}
