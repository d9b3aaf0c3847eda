'use client';
import {
  createContext,
  type KeyboardEvent,
  type PointerEvent,
  type ReactNode,
  useContext,
  useRef,
  useState,
} from 'react';
import type { Readings } from '#lib/views/client-readings.ts';

/** The day that is read off all charts; null: the line is at rest. */
type Reading = { at: number | null; readings: Readings; read: (at: number | null) => void };

const ReadingContext = createContext<Reading>({
  at: null,
  readings: { days: [], byPanel: {} },
  read: () => undefined,
});

export function useReading(): Reading {
  return useContext(ReadingContext);
}

type Props = { readings: Readings; className: string | undefined; children: ReactNode };

/** Moves one thin line to a date on all charts inside: by pointer here, by arrow keys on the axis; Esc lets it return. */
export function ReadingArea({ readings, className, children }: Props) {
  const [at, read] = useState<number | null>(null);
  const byKeys = useRef(false);
  const days = readings.days.length;
  function follow(event: PointerEvent<HTMLDivElement>) {
    const plot = event.target instanceof Element ? event.target.closest('[data-plot]') : null;
    if (!plot) return;
    const { left, width } = plot.getBoundingClientRect();
    const day = Math.floor(((event.clientX - left) / width) * days);
    byKeys.current = false;
    if (day >= 0 && day < days) read(day);
  }
  function onKey(event: KeyboardEvent<HTMLDivElement>) {
    if (event.key === 'Escape') read(null);
    else byKeys.current = true;
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the slider of the axis does the same by keyboard
    <div
      className={className}
      onPointerMove={follow}
      onPointerDown={follow}
      onPointerLeave={() => byKeys.current || read(null)}
      onKeyDown={onKey}
    >
      <ReadingContext value={{ at, readings, read }}>{children}</ReadingContext>
    </div>
  );
}
