import { WindowChart } from '#app/_charts/window-chart.tsx';
import { PAGE_DAYS } from '#lib/views/client-axis.ts';
import { WINDOW_HEIGHT, type WindowPanel } from '#lib/views/client-window.ts';
import styles from './charts.module.css';
import { Panel } from './panel.tsx';
import { heightOf } from './places.ts';
import { ReadingMark } from './reading/reading-mark.tsx';

const high = heightOf(WINDOW_HEIGHT);

/** How long the client holds near the two edges of balance; left out where no kind of hold has both. */
export function BalanceWindow({ windows }: { windows: WindowPanel[] }) {
  if (windows.length === 0) return null;
  const rows = windows.flatMap((panel) =>
    [
      ...panel.heel.map((point) => ({ ...point, what: 'heel pull' })),
      ...panel.toe.map((point) => ({ ...point, what: 'toe pull' })),
    ]
      .sort((a, b) => b.at - a.at)
      .map((point) => ({
        key: `${panel.key} ${point.date} ${point.what}`,
        cells: [point.date, panel.title, point.what, `${point.seconds} s`],
      })),
  );
  return (
    <Panel
      title="Balance window"
      explain="Best clean hold of the day, s. Heel pulls go up from the middle (over-balance), toe pulls down (under-balance)."
      summary={windows.map((panel) => panel.summary).join(' ')}
      table={{ columns: ['Day', 'Hold', 'Edge', 'Best'], rows }}
    >
      {windows.map((panel) => (
        <div key={panel.key} className={styles.row}>
          <div className={`${styles.side} ${styles.high}`} style={high}>
            <strong>{panel.title}</strong>
            <span className={styles.unit}>up to {panel.top} s each way</span>
          </div>
          <div className={styles.plot} data-plot>
            <WindowChart panel={panel} height={WINDOW_HEIGHT} days={PAGE_DAYS} />
            <ReadingMark panel={panel.key} />
          </div>
          <div className={styles.right}>
            {panel.lines.map((line) =>
              line.strong ? (
                <strong key={line.text}>{line.text}</strong>
              ) : (
                <span key={line.text}>{line.text}</span>
              ),
            )}
          </div>
        </div>
      ))}
    </Panel>
  );
}
