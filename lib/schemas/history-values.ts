import { z } from 'zod';
import { isZone } from '#lib/domain/local-date.ts';
import { PAIN_REGIONS, PAIN_SIDES, SIDES } from '#lib/domain/vocabulary.ts';

// The kinds of values a history file is made of.

export const id = z.string().min(1).max(200);
export const words = z.string().max(20_000);
export const localDate = z.iso.date().describe("Calendar date YYYY-MM-DD in the client's own zone");
export const instant = z.iso.datetime().describe('Instant, ISO 8601 in UTC, ends in Z');
export const zone = z
  .string()
  .min(1)
  .max(100)
  .refine(isZone, 'is not the name of a time zone, e.g. Europe/Lisbon');
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
