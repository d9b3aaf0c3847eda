import type { DrawnForecast } from '#lib/views/drawn-forecast.ts';
import styles from './forecast-figure.module.css';

/** The rungs left on one line of time: a stroke from early to late, a mark in the middle, thick where the doubt is. */
export function ForecastFigure({ drawn }: { drawn: DrawnForecast }) {
  return (
    <figure className={styles.figure}>
      <ol className={styles.steps}>
        {drawn.steps.map((step) => (
          <li key={step.key} title={step.exact}>
            <span className={styles.name} data-decides={step.decides || undefined}>
              {step.name}
              <span className={styles.months}>, {step.months}</span>
              <span className={styles.unseen}>, {step.exact}</span>
            </span>
            <span className={styles.track} aria-hidden="true">
              <span
                className={styles.range}
                data-decides={step.decides || undefined}
                style={{ left: `${step.from}%`, right: `${100 - step.to}%` }}
              />
              <span className={styles.middle} style={{ left: `${step.middle}%` }} />
            </span>
          </li>
        ))}
      </ol>
      <div className={styles.ticks} aria-hidden="true">
        <span className={styles.today}>today</span>
        {drawn.ticks.map((tick) => (
          <span key={tick.label} className={styles.tick} style={{ left: `${tick.at}%` }}>
            {tick.label}
          </span>
        ))}
      </div>
      <figcaption>
        A stroke runs from the day 1 of 10 draws is done by to the day 9 of 10 are; the upright mark is the
        middle. {drawn.decided}
      </figcaption>
    </figure>
  );
}
