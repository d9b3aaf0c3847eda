'use client';
import { useEffect, useRef, useState } from 'react';
import type { AmountKind } from '#lib/domain/parse-amount.ts';
import { Minus, Plus } from '../_phone/icons.tsx';
import { readTyped } from '../_phone/read-typed.ts';

type Props = {
  /** What it is, for eyes and screen readers: "right, set 3, planned 15". */
  label: string;
  value: number | null;
  unit: string;
  kind: AmountKind;
  step?: number;
  /** 0 when left out. */
  least?: number;
  most: number;
  onChange: (value: number) => void;
};

const HOLD_AFTER_MS = 400;
const HOLD_EVERY_MS = 110;

/** Minus, value, plus; hold to run. The value is also a field that reads "7,5", "1:30" and "12 s". */
export function Stepper({ label, value, unit, kind, step = 1, least = 0, most, onChange }: Props) {
  const [typed, setTyped] = useState<string | null>(null);
  const [isWrong, setWrong] = useState(false);
  const latest = useRef({ value: value ?? 0, onChange });
  latest.current = { value: value ?? 0, onChange };
  const move = (by: number) => {
    setTyped(null);
    setWrong(false);
    latest.current.onChange(Math.min(most, Math.max(least, latest.current.value + by)));
  };
  const takeOver = () => {
    if (typed === null) return;
    const read = readTyped(typed, kind, { least, most });
    setWrong(read === undefined);
    if (read === undefined) return;
    onChange(read);
    setTyped(null);
  };
  const shown = value === null ? '' : unit ? `${value} ${unit}` : String(value);
  return (
    <div>
      <div className="stepper">
        <Running label={`Less: ${label}`} onMove={() => move(-step)}>
          <Minus />
        </Running>
        <label>
          <input
            inputMode={least < 0 ? 'text' : 'decimal'}
            autoComplete="off"
            aria-label={label}
            aria-invalid={isWrong}
            value={typed ?? shown}
            onFocus={(event) => event.target.select()}
            onChange={(event) => setTyped(event.target.value)}
            onBlur={takeOver}
            onKeyDown={(event) => event.key === 'Enter' && takeOver()}
          />
          <small aria-hidden="true">{label}</small>
        </label>
        <Running label={`More: ${label}`} onMove={() => move(step)}>
          <Plus />
        </Running>
      </div>
      {isWrong ? (
        <p className="problem" role="alert">
          “{typed}” is not read. Write a number {least < 0 ? `from ${least} ` : ''}up to {most}, such as 12,
          7,5 or {least < 0 ? '-4' : '1:30'}.
        </p>
      ) : null}
    </div>
  );
}

function Running({
  label,
  onMove,
  children,
}: {
  label: string;
  onMove: () => void;
  children: React.ReactNode;
}) {
  const timer = useRef<number | undefined>(undefined);
  const ran = useRef(false);
  const stop = () => window.clearInterval(timer.current);
  useEffect(() => () => window.clearInterval(timer.current), []);
  const start = () => {
    stop();
    ran.current = false;
    const from = Date.now();
    timer.current = window.setInterval(() => {
      if (Date.now() - from < HOLD_AFTER_MS) return;
      ran.current = true;
      onMove();
    }, HOLD_EVERY_MS);
  };
  return (
    <button
      type="button"
      aria-label={label}
      onPointerDown={start}
      onPointerUp={stop}
      onPointerLeave={stop}
      onPointerCancel={stop}
      onClick={() => !ran.current && onMove()}
    >
      {children}
    </button>
  );
}
