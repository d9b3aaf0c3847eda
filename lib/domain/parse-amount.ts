/** What a form field counts; it decides which units may be typed and what "1:30" means. */
export type AmountKind = 'seconds' | 'minutes' | 'count' | 'kg' | 'degrees';

const PLAIN = /^\d{1,7}([.,]\d{1,4})?$/;
const CLOCK = /^(\d{1,3}):([0-5]\d)$/;
const WITH_UNIT = /^(.*?\d)\s*([a-z°]+)$/;

/** Factor to the kind's own unit for every unit that people type behind the number. */
const UNITS: Record<AmountKind, Record<string, number>> = {
  seconds: { s: 1, sec: 1, secs: 1, second: 1, seconds: 1, min: 60, minutes: 60 },
  minutes: { min: 1, mins: 1, minute: 1, minutes: 1, m: 1, h: 60, hours: 60 },
  count: { x: 1, rep: 1, reps: 1, try: 1, tries: 1 },
  kg: { kg: 1, kgs: 1 },
  degrees: { '°': 1, deg: 1, degrees: 1, cm: 1 },
};

/**
 * Reads a number as people type it on a phone: "7,5", "7.5", "7.5 kg", "12 s", "1:30".
 * Answers in the unit of `kind` (seconds, minutes, pieces, kg, degrees or cm); "1:30" is 90 seconds or 90 minutes.
 * `undefined` when it is not such a number: "1e9", "0x1F", "1.000,5", full-width digits, a minus, nothing.
 */
export function parseAmount(text: string, kind: AmountKind): number | undefined {
  const typed = text.trim().toLowerCase();
  const clock = CLOCK.exec(typed);
  if (clock && (kind === 'seconds' || kind === 'minutes')) return Number(clock[1]) * 60 + Number(clock[2]);
  const unit = WITH_UNIT.exec(typed);
  const digits = unit ? (unit[1] ?? '') : typed;
  const factor = unit ? UNITS[kind][unit[2] ?? ''] : 1;
  if (factor === undefined || !PLAIN.test(digits)) return undefined;
  return Number(digits.replace(',', '.')) * factor;
}
