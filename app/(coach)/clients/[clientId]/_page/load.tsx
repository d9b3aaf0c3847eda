import { LoadChart } from '#app/_charts/load-chart.tsx';
import type { ClientAxis } from '#lib/views/client-axis.ts';
import type { LoadPanel, LoadView } from '#lib/views/client-load.ts';
import styles from './charts.module.css';
import { Panel } from './panel.tsx';
import { ReadingMark } from './reading/reading-mark.tsx';

export function Load({ load, axis }: { load: LoadView; axis: ClientAxis }) {
  const rows = axis.ticks.map((tick, index) => ({
    key: tick.exact,
    cells: [tick.exact, ...load.panels.map((panel) => panel.blocks[index]?.printed ?? '')],
  }));
  return (
    <Panel
      title="Load"
      explain="Blocks of 7 days. Band: usual week, two spreads each way; solid ink lies above it. A + marks unknown days: at least so much."
      summary={load.summary}
      table={{
        columns: [
          '7 days from',
          ...load.panels.map((panel) => `${panel.title} ${panel.side} (${panel.unit})`),
        ],
        rows,
      }}
    >
      {load.panels.map((panel) => (
        <LoadRow key={panel.key} panel={panel} />
      ))}
      {load.others.length > 0 ? (
        <div className={styles.row}>
          <details className={styles.more}>
            <summary>
              {load.others.length} more {load.others.length === 1 ? 'tissue' : 'tissues'}
            </summary>
            <ul>
              {load.others.map((other) => (
                <li key={other.title}>
                  {other.title}: {other.said}. {other.figures.join('; ')}.
                </li>
              ))}
            </ul>
          </details>
        </div>
      ) : null}
    </Panel>
  );
}

function LoadRow({ panel }: { panel: LoadPanel }) {
  return (
    <div className={styles.row}>
      <div className={styles.side}>
        <strong>{panel.title}</strong>
        {panel.side ? <strong>{panel.side}</strong> : null}
        <span className={styles.unit}>{panel.unit}</span>
      </div>
      <div className={styles.plot} data-plot>
        <LoadChart panel={panel} />
        <ReadingMark panel={panel.key} />
        <div className={styles.values} aria-hidden="true">
          {panel.labels.map((label) => (
            <span key={label.key} className={label.onInk ? styles.onink : undefined}>
              {label.text}
            </span>
          ))}
        </div>
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
      <details className={styles.more}>
        <summary>
          More figures of {panel.title.toLowerCase()}
          {panel.side ? `, ${panel.side}` : ''}
        </summary>
        <ul>
          {panel.figures.map((figure) => (
            <li key={figure}>{figure}</li>
          ))}
        </ul>
      </details>
    </div>
  );
}
