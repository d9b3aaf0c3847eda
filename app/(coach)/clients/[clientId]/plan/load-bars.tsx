import type { LoadBars as Bars } from '#lib/views/plan-live.ts';
import styles from './live.module.css';

/** Four weeks against the usual week: what lies above its band is solid ink, the number stands under each bar. */
export function LoadBars({ bars }: { bars: Bars }) {
  const { band } = bars;
  const percent = (share: number) => `${(share * 100).toFixed(1)}%`;
  return (
    <figure className={styles.load}>
      <figcaption className={styles.loadName}>
        <strong>{bars.title}</strong>
        {bars.side ? ` ${bars.side}` : ''} <span className={styles.quiet}>{bars.usual}</span>
      </figcaption>
      <div role="img" aria-label={bars.summary}>
        <div className={styles.plot}>
          {band ? (
            <>
              <div
                className={styles.band}
                style={{ bottom: percent(band.low), height: percent(band.high - band.low) }}
              />
              <div className={styles.middle} style={{ bottom: percent(band.middle) }} />
            </>
          ) : null}
          {bars.bars.map((bar) => (
            <div key={bar.key} className={styles.bar}>
              {bar.over > 0 ? <div className={styles.over} style={{ height: percent(bar.over) }} /> : null}
              {bar.inside > 0 ? (
                <div className={styles.inside} style={{ height: percent(bar.inside) }} />
              ) : null}
            </div>
          ))}
        </div>
        <div className={styles.values} aria-hidden="true">
          {bars.bars.map((bar) => (
            <span key={bar.key}>{bar.printed}</span>
          ))}
        </div>
      </div>
    </figure>
  );
}
