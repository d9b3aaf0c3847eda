import { z } from 'zod';
import { isLocalDate, isZone } from '#lib/domain/local-date.ts';
import { PAIN_REGIONS, PAIN_SIDES, SIDES } from '#lib/domain/vocabulary.ts';

// The kinds of values a history file is made of.

export const id = z.string().min(1).max(200);
export const words = z.string().max(20_000);
const NO_DATE = 'is not a date that exists, from 2000 on: write it as 2026-11-24';
export const localDate = z.iso
  .date(NO_DATE)
  .refine(isLocalDate, NO_DATE)
  .describe("Calendar date YYYY-MM-DD in the client's own zone");
export const instant = z.iso
  .datetime('is not an instant in UTC: write it as 2026-11-24T18:40:00Z')
  .describe('Instant, ISO 8601 in UTC, ends in Z');
export const zone = z
  .string()
  .min(1)
  .max(100)
  .refine(isKnownZone, 'is not the name of a time zone, e.g. Europe/Lisbon');
export const clockTime = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$|^24:00$/, 'is not a time of day, e.g. 09:00')
  .describe("HH:MM in the team's zone");
/** Ranges of movement can be under zero. */
export const result = z.number().min(-1_000).max(1_000_000);
export const tenth = z.int().min(0).max(10);
export const amount = z.number().min(0).max(1_000_000);
export const painSide = z.enum(PAIN_SIDES);
export const region = z.enum(PAIN_REGIONS);
export const side = z.enum(SIDES);

const known = new Set<string>();

/** Asking for a zone is slow and every check-in names one: what was found good is remembered, up to a bound. */
function isKnownZone(name: string): boolean {
  if (known.has(name)) return true;
  if (!isZone(name)) return false;
  if (known.size < 1_000) known.add(name);
  return true;
}
