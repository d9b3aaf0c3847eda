import { type AmountKind, parseAmount } from '#lib/domain/parse-amount.ts';
import type { Measure } from '#lib/domain/vocabulary.ts';

export type LogAmount = { value: number; tried: number | null };

const KINDS: Record<Measure, AmountKind> = {
  hold: 'seconds',
  lowering: 'seconds',
  reps: 'count',
  'made-tried': 'count',
  'range-up': 'degrees',
  'range-down': 'degrees',
};
const TIMES = /^(\d{1,2})\s*[x×*]\s*(.+)$/i;
const MADE = /^(\d{1,3})\s*(?:\/|of|from)\s*(\d{1,3})$/i;
const MOST_SETS = 50;

/**
 * The sets that a cell tells of, as people write them: "12", "12 s", "1:30", "3x8", "10/8/8", "10; 8; 8", and "7/10"
 * for a drill of made and tried. `sets`: what another column says, when the cell holds one amount. Undefined: it cannot
 * be read; an empty cell is an empty list.
 */
export function logAmounts(cell: string, measure: Measure, sets?: number): LogAmount[] | undefined {
  const text = cell.trim();
  if (text === '' || text === '-') return [];
  const times = TIMES.exec(text);
  if (times) {
    const count = Number(times[1]);
    if (sets !== undefined && sets !== count) return undefined;
    return logAmounts(times[2] ?? '', measure, count);
  }
  const made = measure === 'made-tried' ? MADE.exec(text) : null;
  if (measure === 'made-tried') {
    const [value, tried] = [Number(made?.[1]), Number(made?.[2])];
    return made && value <= tried ? repeated({ value, tried }, sets) : undefined;
  }
  const parts = text.split(/\s*[/;|]\s*|,\s+/).filter((part) => part !== '');
  const amounts = parts.map((part) => parseAmount(part, KINDS[measure]));
  if (amounts.some((amount) => amount === undefined)) return undefined;
  const values = amounts.map((value) => ({ value: value ?? 0, tried: null }));
  const [only] = values;
  if (values.length === 1 && only) return repeated(only, sets);
  return sets === undefined || sets === values.length ? values : undefined;
}

function repeated(amount: LogAmount, sets = 1): LogAmount[] | undefined {
  if (!Number.isInteger(sets) || sets < 1 || sets > MOST_SETS) return undefined;
  return Array.from({ length: sets }, () => amount);
}
