'use client';

import { Line, LineChart, ReferenceLine, XAxis, YAxis } from 'recharts';
import type { Side } from '#lib/domain/vocabulary.ts';
import type { LadderPanel } from '#lib/views/client-ladders.ts';
import { ChartBox } from './chart-box.tsx';
import { Mark } from './marks.tsx';

const COLOUR: Record<Side, string> = { left: 'var(--left)', right: 'var(--right)', both: 'var(--ink)' };

/** A rung is a step: level while on it, upright when it changes. Left dashed and hollow, right solid and filled. */
export function LadderChart({ panel, height, days }: { panel: LadderPanel; height: number; days: number }) {
  return (
    <ChartBox summary={panel.summary} height={height}>
      <LineChart margin={{ top: 0, right: 0, bottom: 0, left: 0 }} accessibilityLayer={false}>
        <XAxis hide type="number" dataKey="at" domain={[0, days]} allowDataOverflow />
        <YAxis hide type="number" domain={[-0.5, panel.rungs.length - 0.5]} allowDataOverflow />
        {panel.rungs.map((rung, level) => (
          <ReferenceLine key={rung.id} y={level} stroke="var(--rule)" />
        ))}
        {panel.paths.map((path) => (
          <Line
            key={path.side}
            data={path.steps}
            dataKey="level"
            type="stepAfter"
            stroke={COLOUR[path.side]}
            strokeWidth={2}
            {...(path.side === 'left' ? { strokeDasharray: '6 4' } : {})}
            dot={false}
            isAnimationActive={false}
          />
        ))}
        {panel.paths.map((path) => (
          <Line
            key={`${path.side} passes`}
            data={path.passes}
            dataKey="level"
            stroke="none"
            isAnimationActive={false}
            dot={({ cx, cy, index }: { cx?: number; cy?: number; index?: number }) => (
              <Mark key={index} cx={cx} cy={cy} colour={COLOUR[path.side]} hollow={path.side === 'left'} />
            )}
          />
        ))}
      </LineChart>
    </ChartBox>
  );
}
