'use client';
import styles from './reading.module.css';
import { useReading } from './reading-area.tsx';

/** Past here what is printed stands left of the line. */
const LATE = 0.55;
const PERCENT = 100;

/** The reading line on one chart, with what the chart says of that day. The slider says the same to whoever listens. */
export function ReadingMark({ panel }: { panel: string }) {
  const { at, readings } = useReading();
  if (at === null) return null;
  const share = (at + 0.5) / readings.days.length;
  const text = readings.byPanel[panel]?.[at] ?? '';
  return (
    <span
      className={styles.line}
      style={{ left: `${share * PERCENT}%` }}
      data-late={share > LATE || undefined}
      aria-hidden="true"
    >
      {text === '' ? null : <span>{text}</span>}
    </span>
  );
}
