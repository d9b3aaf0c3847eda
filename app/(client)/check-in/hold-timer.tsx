'use client';
import { useEffect, useState } from 'react';

/** Counts a hold. The seconds land in the set as timed; a short buzz, where the phone allows it, says that it runs. */
export function HoldTimer({ onTimed }: { onTimed: (seconds: number) => void }) {
  const [startedAt, setStartedAt] = useState<number | null>(null);
  const [seconds, setSeconds] = useState(0);
  useEffect(() => {
    if (startedAt === null) return;
    const tick = window.setInterval(
      () => setSeconds(Math.floor((performance.now() - startedAt) / 1_000)),
      200,
    );
    return () => window.clearInterval(tick);
  }, [startedAt]);
  const press = () => {
    navigator.vibrate?.(60);
    if (startedAt === null) {
      setSeconds(0);
      setStartedAt(performance.now());
      return;
    }
    onTimed(Math.round((performance.now() - startedAt) / 1_000));
    setStartedAt(null);
  };
  return (
    <button type="button" className="cell" aria-pressed={startedAt !== null} onClick={press}>
      {startedAt === null ? 'Time it' : `Stop: ${seconds} s`}
    </button>
  );
}
