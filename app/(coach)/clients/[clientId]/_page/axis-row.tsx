import type { ClientAxis } from '#lib/views/client-axis.ts';
import { PAGE_DAYS } from '#lib/views/client-axis.ts';
import styles from './axis.module.css';
import { atDay } from './places.ts';
import { ReadingSlider } from './reading/reading-slider.tsx';

/** The one date axis of all panels: blocks of seven days to the line, weeks ahead behind it. */
export function AxisRow({ axis, foot = false }: { axis: ClientAxis; foot?: boolean }) {
  return (
    <div className={`${styles.axis} ${foot ? styles.foot : ''}`}>
      <div className={styles.dates} aria-hidden={foot}>
        {axis.ticks.map((tick) => (
          <span key={tick.at} className={styles.tick} style={{ left: atDay(tick.at) }} title={tick.exact}>
            {tick.label}
          </span>
        ))}
        {axis.ahead.map((tick) => (
          <span
            key={tick.at}
            className={`${styles.tick} ${styles.ahead}`}
            style={{ left: atDay(tick.at) }}
            title={tick.exact}
          >
            {tick.label}
          </span>
        ))}
        {foot ? null : <ReadingSlider />}
        {foot
          ? null
          : axis.plans.map((plan) => (
              <span
                key={plan.exact}
                className={styles.planned}
                style={{ left: atDay(plan.at) }}
                title={plan.exact}
              >
                {plan.label}
              </span>
            ))}
      </div>
      {foot ? null : (
        <>
          <span className={styles.key}>bar trained, dot rest, dash away, gap unknown</span>
          <div className={styles.ribbon} role="img" aria-label={`${PAGE_DAYS} days. ${axis.summary}`}>
            {axis.ribbon.map((day) => (
              <span key={day.said} className={styles.day} data-state={day.state} title={day.said} />
            ))}
          </div>
        </>
      )}
    </div>
  );
}
