'use client';

import { Line, LineChart, ReferenceLine, XAxis, YAxis } from 'recharts';
import type { PainView } from '#lib/views/client-pain.ts';
import { ChartBox } from './chart-box.tsx';
import { Mark } from './marks.tsx';

/** Scores from here on are drawn as marks in colour; below the line stays thin. */
const MARKED_FROM = 3;
const DASHES = [undefined, '5 4', '1 4'] as const;

type Dot = { cx?: number; cy?: number; index?: number; value?: unknown; payload?: { worst?: number | null } };

/** Pain 0-10, always full scale; unknown days break the line. Ring: the morning. */
export function PainChart({ pain, height, days }: { pain: PainView; height: number; days: number }) {
  return (
    <ChartBox summary={pain.summary} height={height}>
      <LineChart margin={{ top: 4, right: 0, bottom: 4, left: 0 }} accessibilityLayer={false}>
        <XAxis hide type="number" dataKey="at" domain={[0, days]} allowDataOverflow />
        <YAxis hide type="number" domain={[0, 10]} />
        <ReferenceLine y={0} stroke="var(--edge)" />
        <ReferenceLine y={10} stroke="var(--rule)" />
        <ReferenceLine y={6} stroke="var(--ink)" strokeDasharray="4 3" />
        {pain.lines.map((line, index) => (
          <Line
            key={line.key}
            data={line.points}
            dataKey="worst"
            stroke="var(--pain)"
            strokeWidth={index === 0 ? 2 : 1.4}
            {...(DASHES[index] ? { strokeDasharray: DASHES[index] } : {})}
            isAnimationActive={false}
            dot={(dot: Dot) => <PainMark key={`${line.key} ${dot.index}`} dot={dot} square={index > 0} />}
          />
        ))}
        {pain.lines.map((line) => (
          <Line
            key={`${line.key} morning`}
            data={line.points}
            dataKey="morning"
            stroke="none"
            isAnimationActive={false}
            dot={({ cx, cy, index, value }: Dot) =>
              typeof value === 'number' && value > 0 ? (
                <Mark key={index} cx={cx} cy={cy} colour="var(--pain)" hollow size={4} />
              ) : (
                <g key={index} />
              )
            }
          />
        ))}
      </LineChart>
    </ChartBox>
  );
}

function PainMark({ dot, square }: { dot: Dot; square: boolean }) {
  const worst = dot.payload?.worst;
  if (typeof worst !== 'number') return <g />;
  if (worst < MARKED_FROM) return <Mark cx={dot.cx} cy={dot.cy} colour="var(--pain)" size={0.75} />;
  return (
    <Mark
      cx={dot.cx}
      cy={dot.cy}
      colour="var(--pain)"
      hollow={square}
      square={square}
      size={square ? 3 : 4}
    />
  );
}
