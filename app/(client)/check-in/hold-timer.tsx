'use client';
import { useEffect, useRef, useState } from 'react';
import { readySound, signal, useAwake, useRunningClock } from '../_phone/signals.ts';
import { holdAt, timedHold } from '../_phone/timer.ts';

type Props = { target: number; onTimed: (seconds: number) => void };

const COUNTDOWN_S = 3;
const SHORT_S = 0.08;
const LONG_S = 0.4;

/** Times a hold: one large button, a countdown when wanted, a beep at the target; the seconds land in the set. */
export function HoldTimer({ target, onTimed }: Props) {
  const [startedAt, setStartedAt] = useState<number | null>(null);
  const [hasCountdown, setCountdown] = useState(true);
  const isRunning = startedAt !== null;
  const now = useRunningClock(isRunning);
  useAwake(isRunning);
  const countdownS = hasCountdown ? COUNTDOWN_S : 0;
  const { ready, seconds } = holdAt(isRunning ? Math.max(0, now - startedAt) : 0, countdownS);
  useBeeps(isRunning, ready, seconds >= target);
  const press = () => {
    if (startedAt === null) {
      readySound();
      setStartedAt(Date.now());
      return;
    }
    const timed = timedHold(Date.now() - startedAt, countdownS);
    setStartedAt(null);
    if (timed !== null) onTimed(timed);
  };
  return (
    <div className="hold-timer">
      <button type="button" className={`act ${isRunning ? 'act-filled' : ''}`} onClick={press}>
        {isRunning ? (
          <>
            Stop <b className="hold-clock">{ready > 0 ? `in ${ready}` : `${seconds} s`}</b>
          </>
        ) : (
          <span>
            Time it <small>beep at {target} s</small>
          </span>
        )}
      </button>
      {isRunning ? null : (
        <button
          type="button"
          className="cell"
          aria-pressed={hasCountdown}
          onClick={() => setCountdown(!hasCountdown)}
        >
          {COUNTDOWN_S} s first
        </button>
      )}
    </div>
  );
}

/** Short when the hold begins, long at the target. */
function useBeeps(isRunning: boolean, ready: number, isThere: boolean): void {
  const said = useRef('');
  useEffect(() => {
    const stage = !isRunning || ready > 0 ? '' : isThere ? 'there' : 'begun';
    if (stage && stage !== said.current) signal(stage === 'there' ? LONG_S : SHORT_S);
    said.current = stage;
  }, [isRunning, ready, isThere]);
}
