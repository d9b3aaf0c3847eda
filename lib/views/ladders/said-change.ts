import { shortDate } from '../say-date.ts';

const SHOWN = 3;
const TIME = { from: 11, to: 16 };

/** "Ines Faria changed pass mark of Tuck on 25 Nov at 14:05 UTC". */
export function saidChange({ by, at, fields }: { by: string; at: Date; fields: string[] }): string {
  const iso = at.toISOString();
  const shown = fields.slice(0, SHOWN);
  const rest = fields.length - shown.length;
  const what = [...shown, ...(rest > 0 ? [`${rest} more`] : [])].join(', ') || 'it';
  return `${by} changed ${what} on ${shortDate(iso.slice(0, 10))} at ${iso.slice(TIME.from, TIME.to)} UTC`;
}
