'use client';

import { weightsOnSupport } from '#lib/checks/supports.ts';
import { SUPPORT_LABELS } from '#lib/domain/labels.ts';
import { SUPPORTS, type Support } from '#lib/domain/vocabulary.ts';
import forms from '../../clients/_parts/forms.module.css';
import { ChoiceField } from './choice-field.tsx';
import styles from './rung.module.css';
import type { SwapChoice, SwapOfForm } from './rung-parts.ts';
import { TextField } from './text-field.tsx';

type Props = {
  swap: SwapOfForm & { at: number };
  rungs: SwapChoice[];
  /** Half of what the rung itself puts on the tissue. */
  most: number;
  error: string | undefined;
  onChange: (patch: Partial<SwapOfForm>) => void;
  onFirst: (() => void) | undefined;
  onRemove: () => void;
};

/** One swap: which rung, on what, why. */
export function SwapLine({ swap, rungs, most, error, onChange, onFirst, onRemove }: Props) {
  const name = rungs.find((rung) => rung.id === swap.insteadId)?.name ?? 'this swap';
  const weight = swapWeight(swap, rungs);
  const known = rungs.some((rung) => rung.id === swap.insteadId);
  const supports: { value: Support | ''; label: string }[] = [
    { value: '', label: 'as the rung says' },
    ...SUPPORTS.map((support) => ({ value: support, label: SUPPORT_LABELS[support] })),
  ];
  return (
    <div className={styles.swap}>
      <ChoiceField
        id={`swap-${swap.at}-instead`}
        label="Do instead"
        {...(weight > most ? { hint: `spares little: ${decimal(weight)} is more than half` } : {})}
        error={error}
        value={swap.insteadId}
        options={[
          ...(known
            ? []
            : [{ value: swap.insteadId, label: swap.insteadId === '' ? 'choose' : 'a rung not in use' }]),
          ...rungs.map((rung) => ({
            value: rung.id,
            label: `${rung.name}, ${rung.ladder}: ${rung.weights[swap.tissue] ?? 0}`,
          })),
        ]}
        onChange={(insteadId) => onChange({ insteadId })}
      />
      <ChoiceField
        id={`swap-${swap.at}-support`}
        label="Support"
        value={swap.support ?? ''}
        options={supports}
        onChange={(support) => onChange({ support: support === '' ? null : support })}
      />
      <TextField
        id={`swap-${swap.at}-why`}
        label="Why, in a few words"
        value={swap.why}
        onChange={(why) => onChange({ why })}
      />
      <div className={styles.swapActs}>
        {onFirst ? (
          <button
            type="button"
            className={forms.plain}
            aria-label={`${name} as first choice`}
            onClick={onFirst}
          >
            First choice
          </button>
        ) : null}
        <button type="button" className={forms.plain} aria-label={`Remove ${name}`} onClick={onRemove}>
          Remove
        </button>
      </div>
    </div>
  );
}

/** What the swap puts on the tissue; of a rung that is not chosen yet: nothing. */
function swapWeight({ insteadId, support, tissue }: SwapOfForm, rungs: SwapChoice[]): number {
  const rung = rungs.find((one) => one.id === insteadId);
  return rung ? (weightsOnSupport(rung.weights, support)[tissue] ?? 0) : 0;
}

function decimal(weight: number): string {
  return String(Number(weight.toFixed(2)));
}
