'use client';

import { Line, LineChart, ReferenceLine, XAxis, YAxis } from 'recharts';
import type { WindowPanel } from '#lib/views/client-window.ts';
import { ChartBox } from './chart-box.tsx';
import { Mark } from './marks.tsx';

type Dot = { cx?: number; cy?: number; index?: number };

/** Heel pulls above the middle, toe pulls below it: the band between the marks is the balance window. */
export function WindowChart({ panel, height, days }: { panel: WindowPanel; height: number; days: number }) {
  const half = panel.top / 2;
  const up = panel.heel.map(({ at, seconds }) => ({ at, seconds }));
  const down = panel.toe.map(({ at, seconds }) => ({ at, seconds: -seconds }));
  return (
    <ChartBox summary={panel.summary} height={height}>
      <LineChart margin={{ top: 5, right: 0, bottom: 5, left: 0 }} accessibilityLayer={false}>
        <XAxis hide type="number" dataKey="at" domain={[0, days]} allowDataOverflow />
        <YAxis hide type="number" domain={[-panel.top, panel.top]} />
        {[panel.top, half, -half, -panel.top].map((y) => (
          <ReferenceLine key={y} y={y} stroke="var(--rule)" />
        ))}
        <ReferenceLine y={0} stroke="var(--edge)" />
        {[...up, ...down].map((point) => (
          <ReferenceLine
            key={`${point.at} ${point.seconds}`}
            segment={[
              { x: point.at, y: 0 },
              { x: point.at, y: point.seconds },
            ]}
            stroke="var(--ink3)"
          />
        ))}
        <Line
          data={up}
          dataKey="seconds"
          stroke="none"
          isAnimationActive={false}
          dot={({ cx, cy, index }: Dot) => <Mark key={index} cx={cx} cy={cy} colour="var(--ink)" size={3} />}
        />
        <Line
          data={down}
          dataKey="seconds"
          stroke="none"
          isAnimationActive={false}
          dot={({ cx, cy, index }: Dot) => (
            <Mark key={index} cx={cx} cy={cy} colour="var(--ink)" size={3} square hollow />
          )}
        />
      </LineChart>
    </ChartBox>
  );
}
