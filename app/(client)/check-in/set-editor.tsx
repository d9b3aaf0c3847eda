'use client';
import { asSentence, FAULT_LABELS } from '#lib/domain/labels.ts';
import type { AmountKind } from '#lib/domain/parse-amount.ts';
import type { Fault, Measure } from '#lib/domain/vocabulary.ts';
import type { DrillSide, PhoneDrill } from '#lib/views/phone-session.ts';
import type { SetDraft } from '../_phone/draft.ts';
import { HoldTimer } from './hold-timer.tsx';
import { Stepper } from './stepper.tsx';

type Props = {
  drill: PhoneDrill;
  side: DrillSide;
  at: number;
  set: SetDraft;
  isPlanned: boolean;
  onSet: (set: SetDraft) => void;
  /** Takes away a set beyond the plan; null: it cannot be. */
  onDrop: (() => void) | null;
};

const KIND: Record<Measure, AmountKind> = {
  hold: 'seconds',
  lowering: 'seconds',
  reps: 'count',
  'made-tried': 'count',
  'range-up': 'degrees',
  'range-down': 'degrees',
};
const MOST: Record<AmountKind, number> = {
  seconds: 3_600,
  minutes: 600,
  count: 1_000,
  kg: 500,
  degrees: 360,
};
const LONG_HOLD_S = 600;

/** Changes one set: its number, the rung's own faults, not done. */
export function SetEditor({ drill, side, at, set, isPlanned, onSet, onDrop }: Props) {
  const kind = KIND[drill.measure];
  const value = set.how === 'not-done' ? null : (set.value ?? side.target);
  const where = side.side === 'both' ? '' : `${side.side}, `;
  const put = (changed: number, how: 'typed' | 'timed') =>
    onSet({ ...set, how, value: changed, tried: triedFor(changed, set, side) });
  const faults: Fault[] = [...drill.faults.filter((fault) => fault !== 'stopped-by-pain'), 'stopped-by-pain'];
  return (
    <div>
      <Stepper
        label={`${where}set ${at + 1}, ${isPlanned ? `planned ${side.target}` : 'not planned'}`}
        value={value}
        unit={drill.unit}
        kind={kind}
        least={kind === 'degrees' ? -MOST.degrees : 0}
        most={MOST[kind]}
        onChange={(changed) => put(changed, 'typed')}
      />
      {kind === 'seconds' && value !== null && value > LONG_HOLD_S ? (
        <p className="problem">{value} s is more than 10 minutes. It is kept as you wrote it.</p>
      ) : null}
      {drill.measure === 'made-tried' ? (
        <Stepper
          label={`${where}set ${at + 1}, tries`}
          value={set.tried ?? side.tries ?? value}
          unit=""
          kind="count"
          most={1_000}
          onChange={(tried) => onSet({ ...set, how: 'typed', tried, value: Math.min(value ?? 0, tried) })}
        />
      ) : null}
      {kind === 'seconds' ? (
        <HoldTimer target={side.target} onTimed={(seconds) => put(seconds, 'timed')} />
      ) : null}
      <div className="cells cells-3">
        {faults.map((fault) => (
          <button
            key={fault}
            type="button"
            className="cell"
            aria-pressed={set.faults.includes(fault)}
            onClick={() => onSet(withFault(set, fault, side))}
          >
            {asSentence(FAULT_LABELS[fault])}
          </button>
        ))}
        <button
          type="button"
          className="cell"
          aria-pressed={set.how === 'not-done'}
          onClick={() => onSet(notDone(set, side))}
        >
          Not done
        </button>
        {onDrop ? (
          <button type="button" className="cell" onClick={onDrop}>
            Take this set out
          </button>
        ) : null}
      </div>
    </div>
  );
}

function triedFor(made: number, set: SetDraft, side: DrillSide): number | null {
  const tried = set.tried ?? side.tries;
  return tried === null ? null : Math.max(tried, made);
}

function withFault(set: SetDraft, fault: Fault, side: DrillSide): SetDraft {
  const faults = set.faults.includes(fault)
    ? set.faults.filter((one) => one !== fault)
    : [...set.faults, fault];
  if (set.how === 'open' || set.how === 'not-done')
    return { how: 'typed', value: side.target, tried: side.tries, faults };
  return { ...set, faults };
}

function notDone(set: SetDraft, side: DrillSide): SetDraft {
  if (set.how === 'not-done') return { how: 'typed', value: side.target, tried: side.tries, faults: [] };
  return { how: 'not-done', value: null, tried: null, faults: [] };
}
