'use client';
import type { KeyboardEvent } from 'react';
import styles from './reading.module.css';
import { useReading } from './reading-area.tsx';

const WEEK = 7;
const PERCENT = 100;
const LATE = 0.7;

/** The hand of the reading line on the axis: arrow keys a day, Page Up and Down a week, Home and End the ends. */
export function ReadingSlider() {
  const { at, readings, read } = useReading();
  const last = readings.days.length - 1;
  const steps: Record<string, number> = {
    ArrowLeft: -1,
    ArrowRight: 1,
    ArrowDown: -1,
    ArrowUp: 1,
    PageDown: -WEEK,
    PageUp: WEEK,
    Home: -last,
    End: last,
  };
  function move(event: KeyboardEvent<HTMLDivElement>) {
    const step = steps[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const next = at === null ? last : at + step;
    read(Math.min(last, Math.max(0, next)));
  }
  const day = at === null ? '' : (readings.days[at] ?? '');
  return (
    <div
      className={styles.slider}
      role="slider"
      tabIndex={0}
      aria-label="Read one day off all charts"
      aria-valuemin={0}
      aria-valuemax={last}
      aria-valuenow={at ?? last}
      aria-valuetext={at === null ? 'no day chosen' : saidAll(day, readings.byPanel, at)}
      title="Arrow keys read one day off all charts, Esc ends it"
      data-plot
      onKeyDown={move}
    >
      {at === null ? null : (
        <span
          className={styles.day}
          style={{ left: `${((at + 0.5) / (last + 1)) * PERCENT}%` }}
          data-late={at / last > LATE || undefined}
        >
          <span>{day}</span>
        </span>
      )}
    </div>
  );
}

function saidAll(day: string, byPanel: Record<string, string[]>, at: number): string {
  return [day, ...Object.values(byPanel).map((texts) => texts[at] ?? '')]
    .filter((text) => text !== '')
    .join('. ');
}
