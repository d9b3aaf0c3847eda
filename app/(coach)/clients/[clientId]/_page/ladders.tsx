import { LadderChart } from '#app/_charts/ladder-chart.tsx';
import { PAGE_DAYS } from '#lib/views/client-axis.ts';
import { type LadderPanel, type LaddersView, RUNG_HEIGHT } from '#lib/views/client-ladders.ts';
import styles from './charts.module.css';
import { ForecastFigure } from './forecast-figure.tsx';
import { Panel } from './panel.tsx';
import { atLevel, heightOf } from './places.ts';
import { ReadingMark } from './reading/reading-mark.tsx';

export function Ladders({ ladders }: { ladders: LaddersView }) {
  const all = [...ladders.panels, ...ladders.others];
  const rows = all.flatMap((ladder) =>
    ladder.table.map((line) => ({
      key: `${ladder.id} ${line.side} ${line.since}`,
      cells: [ladder.name, line.rung, line.side, line.since],
    })),
  );
  return (
    <Panel
      title="Ladders"
      explain={
        all.length === 0
          ? 'No rung is set yet. Saving a plan places the client on its rungs.'
          : 'Left dashed and hollow, right solid and filled. A point is a day that met the pass mark.'
      }
      summary={ladders.summary}
      table={{ columns: ['Ladder', 'Rung', 'Side', 'Since'], rows }}
    >
      {ladders.panels.map((ladder) => (
        <LadderRow key={ladder.id} ladder={ladder} />
      ))}
      {ladders.others.length > 0 ? (
        <div className={styles.row}>
          <details className={styles.more}>
            <summary>
              {ladders.others.length} more {ladders.others.length === 1 ? 'ladder' : 'ladders'}
            </summary>
            <ul>
              {ladders.others.map((ladder) => (
                <li key={ladder.id}>{ladder.summary}</li>
              ))}
            </ul>
          </details>
        </div>
      ) : null}
    </Panel>
  );
}

function LadderRow({ ladder }: { ladder: LadderPanel }) {
  const height = ladder.rungs.length * RUNG_HEIGHT;
  const count = ladder.rungs.length;
  const high = heightOf(height);
  return (
    <div className={styles.row}>
      <h3 className={styles.ladderName}>{ladder.name}</h3>
      <div className={`${styles.side} ${styles.tall}`} style={{ height }}>
        <span className={styles.ladder} aria-hidden="true" />
        {ladder.rungs.map((rung, level) => (
          <span key={rung.id}>
            <span
              className={styles.rung}
              data-current={rung.current || undefined}
              style={{ top: atLevel(level, count) }}
              title={rung.name}
            >
              {rung.name}
            </span>
            <span
              className={styles.bar}
              data-reached={rung.reached || undefined}
              style={{ top: atLevel(level, count) }}
              aria-hidden="true"
            />
          </span>
        ))}
      </div>
      <div className={styles.plot} data-plot>
        <LadderChart panel={ladder} height={height} days={PAGE_DAYS} />
        <ReadingMark panel={ladder.id} />
      </div>
      <div className={`${styles.right} ${styles.high}`} style={high}>
        {ladder.paths.map((path) => (
          <strong key={path.side} className={styles.placed} style={{ top: path.labelTop }}>
            {path.now}
          </strong>
        ))}
      </div>
      {ladder.forecasts.map((forecast) =>
        forecast.drawn ? (
          <details key={forecast.key} className={styles.more}>
            <summary>{forecast.sentence}</summary>
            <ForecastFigure drawn={forecast.drawn} />
            <ul>
              {forecast.working.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </details>
        ) : (
          <p key={forecast.key} className={styles.more}>
            {forecast.sentence}
          </p>
        ),
      )}
    </div>
  );
}
