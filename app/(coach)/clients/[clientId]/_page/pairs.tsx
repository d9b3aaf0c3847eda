import { PairChart } from '#app/_charts/pair-chart.tsx';
import { PAGE_DAYS } from '#lib/views/client-axis.ts';
import { PAIR_HEIGHT, type PairPanel } from '#lib/views/client-pairs.ts';
import styles from './charts.module.css';
import { Panel } from './panel.tsx';
import { atValue, heightOf } from './places.ts';
import { ReadingMark } from './reading/reading-mark.tsx';

const high = heightOf(PAIR_HEIGHT);

export function Pairs({ pairs }: { pairs: PairPanel[] }) {
  const rows = pairs.flatMap((panel) =>
    [...panel.pairs].reverse().map((pair) => ({
      key: `${panel.rungId} ${pair.at}`,
      cells: [pair.date, panel.title, `${pair.left} ${panel.unit}`, `${pair.right} ${panel.unit}`],
    })),
  );
  return (
    <Panel
      title="Left against right"
      explain={
        pairs.length === 0
          ? 'No rung was done left and right on the same day in these 84 days.'
          : 'Best of the day, both sides on the same day. The stroke between them is the gap.'
      }
      summary={pairs.map((panel) => panel.summary).join(' ')}
      table={{ columns: ['Day', 'Rung', 'Left', 'Right'], rows }}
    >
      {pairs.map((panel) => (
        <div key={panel.rungId} className={`${styles.row} ${styles.pair}`}>
          <div className={styles.side} style={{ minHeight: PAIR_HEIGHT }}>
            <strong style={{ paddingRight: 34 }}>{panel.title}</strong>
            {panel.ticks.map((tick) => (
              <span key={tick.value} className={styles.score} style={{ top: atValue(tick.value, panel.top) }}>
                {tick.label}
              </span>
            ))}
          </div>
          <div className={styles.plot} data-plot>
            <PairChart panel={panel} height={PAIR_HEIGHT} days={PAGE_DAYS} />
            <ReadingMark panel={panel.rungId} />
          </div>
          <div className={`${styles.right} ${styles.high}`} style={high}>
            <strong className={styles.placed} style={{ top: panel.leftAt }}>
              {panel.left}
            </strong>
            <strong className={styles.placed} style={{ top: panel.rightAt }}>
              {panel.right}
            </strong>
            <span className={styles.placed} style={{ top: panel.gapAt }}>
              {panel.gap}
            </span>
          </div>
        </div>
      ))}
    </Panel>
  );
}
