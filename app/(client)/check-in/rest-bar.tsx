'use client';
import { useEffect, useState } from 'react';
import { isSilent, readySound, setSilent, signal, useAwake, useRunningClock } from '../_phone/signals.ts';
import { clockOf, restLeft } from '../_phone/timer.ts';

const LONG_S = 0.4;

/** Counts the rest between two sets; begins anew with each `endsAt`. Nothing waits for it. */
export function RestBar({ endsAt, onSkip }: { endsAt: number; onSkip: () => void }) {
  const [silent, setQuiet] = useState(isSilent);
  const [over, setOver] = useState(0);
  const isOver = over === endsAt;
  const left = restLeft(endsAt, useRunningClock(!isOver));
  useAwake(!isOver);
  useEffect(() => {
    if (left > 0 || over === endsAt) return;
    setOver(endsAt);
    signal(LONG_S);
  }, [left, over, endsAt]);
  const toggle = () => {
    setSilent(!silent);
    setQuiet(!silent);
    readySound();
  };
  return (
    <div className="rest-bar">
      <span role="timer" className="rest-left">
        {isOver ? '' : `Rest ${clockOf(left)}`}
      </span>
      <span role="status">{isOver ? 'Rest is over.' : ''}</span>
      <button type="button" className="word-act" aria-pressed={silent} onClick={toggle}>
        Silent
      </button>
      <button type="button" className="word-act" onClick={onSkip}>
        {isOver ? 'Close' : 'Skip'}
      </button>
    </div>
  );
}
