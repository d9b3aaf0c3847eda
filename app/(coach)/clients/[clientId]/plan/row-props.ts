import type { PointerEvent } from 'react';
import type { FormLadder } from '#lib/views/plan-form.ts';
import type { FormRow } from '#lib/views/plan-rows.ts';
import type { DoseOf } from '#lib/views/proposed-dose.ts';

export type RowProps = {
  row: FormRow;
  /** "A2": session and place in it. */
  place: string;
  /** Its place in the session, from 0, of so many. */
  at: number;
  of: number;
  isHeld: boolean;
  onHold: (event: PointerEvent) => void;
  ladders: FormLadder[];
  /** The other rows of the session. */
  others: FormRow[];
  doseOf: DoseOf;
  error: (name: string) => string | undefined;
  onChange: (patch: Partial<FormRow>) => void;
  onRemove: () => void;
  onMove: (to: number) => void;
  onPart: () => void;
};
