'use client';

import { Bar, BarChart, ReferenceArea, ReferenceLine, XAxis, YAxis } from 'recharts';
import type { LoadPanel } from '#lib/views/client-load.ts';
import { ChartBox } from './chart-box.tsx';

const BAR = { isAnimationActive: false, stackId: 'load', barSize: 40 } as const;

type Rect = { x?: number | string; y?: number | string; width?: number | string; height?: number | string };

/** Blocks of seven days; what lies above the usual week + 2 spreads is solid ink, the band stands behind. */
export function LoadChart({ panel }: { panel: LoadPanel }) {
  const { usual } = panel;
  return (
    <ChartBox summary={panel.summary} height={panel.height}>
      <BarChart
        data={panel.blocks}
        margin={{ top: 0, right: 0, bottom: 0, left: 0 }}
        accessibilityLayer={false}
      >
        <XAxis hide type="category" />
        <YAxis hide type="number" domain={[0, panel.top]} />
        {usual ? (
          <ReferenceArea
            y1={usual.low}
            y2={usual.high}
            fill="var(--tint)"
            fillOpacity={0.35}
            stroke="var(--edge)"
          />
        ) : null}
        <Bar dataKey="inside" {...BAR} shape={Body} />
        <Bar dataKey="over" {...BAR} fill="var(--ink)" />
        {usual ? <ReferenceLine y={usual.week} stroke="var(--ink3)" strokeDasharray="1 3" /> : null}
        <ReferenceLine y={0} stroke="var(--edge)" />
      </BarChart>
    </ChartBox>
  );
}

/** A pale body with a firm cap. */
function Body({ x, y, width, height }: Rect) {
  const [left, top, wide, high] = [Number(x), Number(y), Number(width), Number(height)];
  if (!(high > 0)) return <g />;
  return (
    <g>
      <rect x={left} y={top} width={wide} height={high} fill="var(--tint)" />
      <rect x={left} y={top} width={wide} height={2} fill="var(--ink2)" />
    </g>
  );
}
