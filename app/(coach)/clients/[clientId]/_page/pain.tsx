import { PainChart } from '#app/_charts/pain-chart.tsx';
import { PAGE_DAYS } from '#lib/views/client-axis.ts';
import { PAIN_HEIGHT, type PainView } from '#lib/views/client-pain.ts';
import styles from './charts.module.css';
import { Panel } from './panel.tsx';
import { atDay, atValue, heightOf } from './places.ts';
import { ReadingMark } from './reading/reading-mark.tsx';

const high = heightOf(PAIN_HEIGHT);
const SCORES = [0, 2, 4, 6, 8, 10];

export function Pain({ pain }: { pain: PainView }) {
  const rows = pain.table.map((line) => ({
    key: `${line.date} ${line.place}`,
    cells: [line.date, line.place, line.worst, line.morning],
  }));
  return (
    <Panel
      title="Pain"
      explain={
        pain.lines.length === 0
          ? pain.summary
          : 'Joint or tendon, worst of the day, 0 to 10. Ring: the morning. A gap is unknown.'
      }
      summary={pain.lines.length === 0 ? undefined : pain.summary}
      table={{ columns: ['Day', 'Where', 'Worst, 0-10', 'Morning, 0-10'], rows }}
    >
      {pain.lines.length > 0 ? (
        <div className={styles.row}>
          <div className={`${styles.side} ${styles.scores} ${styles.high}`} style={high}>
            {SCORES.map((score) => (
              <span
                key={score}
                className={styles.score}
                data-named={score === 6 || undefined}
                style={{ top: atValue(score, 10) }}
              >
                {score}
              </span>
            ))}
          </div>
          <div className={styles.plot} data-plot>
            <ReadingMark panel="pain" />
            <PainChart pain={pain} height={PAIN_HEIGHT} days={PAGE_DAYS} />
            <span className={styles.named} style={{ top: `calc(${atValue(6, 10)} - 16px)` }}>
              6: stop that work, see a clinician
            </span>
            {pain.lines.map((line) =>
              line.peak ? (
                <span
                  key={line.key}
                  className={styles.peak}
                  data-late={line.peak.isLate || undefined}
                  style={{ left: atDay(line.peak.at), top: atValue(line.peak.value, 10) }}
                >
                  {line.peak.said}
                </span>
              ) : null,
            )}
          </div>
          <div className={`${styles.right} ${styles.high}`} style={high}>
            {pain.lines.map((line) => (
              <div key={line.key} className={styles.placed} style={{ top: line.labelAt }}>
                <strong>
                  {line.place}: {line.now}
                </strong>
                <span>{line.usual}</span>
              </div>
            ))}
          </div>
        </div>
      ) : null}
      {pain.others.length > 0 ? (
        <div className={styles.row}>
          <p className={styles.more}>Also told: {pain.others.join('; ')}.</p>
        </div>
      ) : null}
    </Panel>
  );
}
