import { type AmountKind, parseAmount } from '#lib/domain/parse-amount.ts';

/** What was typed into a stepper; a minus counts only where values below 0 exist. Undefined: not read, or out of bounds. */
export function readTyped(
  text: string,
  kind: AmountKind,
  bounds: { least: number; most: number },
): number | undefined {
  const typed = text.trim();
  const isBelow = bounds.least < 0 && /^[-−]/.test(typed);
  const amount = parseAmount(isBelow ? typed.slice(1) : typed, kind);
  if (amount === undefined) return undefined;
  const value = isBelow && amount !== 0 ? -amount : amount;
  return value >= bounds.least && value <= bounds.most ? value : undefined;
}
