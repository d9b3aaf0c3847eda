import type { StripPaths } from '#lib/views/strip-paths.ts';
import { STRIP_HEIGHT, STRIP_WIDTH } from '#lib/views/strip-paths.ts';
import styles from './strip.module.css';

/** A client's last 12 weeks, 228 px wide: steps on top, pain in the middle, load at the foot. */
export function Strip({ paths, spoken }: { paths: StripPaths; spoken: string }) {
  return (
    <svg
      className={styles.strip}
      width={STRIP_WIDTH}
      height={STRIP_HEIGHT}
      viewBox={`0 0 ${STRIP_WIDTH} ${STRIP_HEIGHT}`}
      role="img"
      aria-label={spoken}
    >
      {paths.bodies && <path className={styles.body} d={paths.bodies} />}
      {paths.caps && <path className={styles.cap} d={paths.caps} />}
      {paths.over && <path className={styles.over} d={paths.over} />}
      {paths.ceiling && <path className={styles.dotted} d={paths.ceiling} />}
      {paths.unknown && <path className={styles.dotted} d={paths.unknown} />}
      {paths.quiet && <path className={styles.quiet} d={paths.quiet} />}
      {paths.loud && <path className={styles.loud} d={paths.loud} />}
      {paths.points.map((point) => (
        <circle key={`${point.x} ${point.y}`} className={styles.point} cx={point.x} cy={point.y} r="2.2" />
      ))}
      {paths.steps && <path className={styles.steps} d={paths.steps} />}
      {paths.earned && <path className={styles.earned} d={paths.earned} />}
      {paths.peak && (
        <text className={styles.peak} x={paths.peak.x} y={paths.peak.y} textAnchor="middle">
          {paths.peak.text}
        </text>
      )}
    </svg>
  );
}
