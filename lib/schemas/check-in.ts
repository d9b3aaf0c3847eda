import { z } from 'zod';
import { isLocalDate, isZone } from '#lib/domain/local-date.ts';
import { type AmountKind, parseAmount } from '#lib/domain/parse-amount.ts';
import {
  DANGER_SIGNS,
  FAULTS,
  GROUNDS,
  PAIN_KINDS,
  PAIN_MOMENTS,
  PAIN_REGIONS,
  PAIN_SIDES,
  SIDES,
  SUPPORTS,
} from '#lib/domain/vocabulary.ts';
import { checkWholeBody } from './check-in-rules.ts';
import { plainText } from './plain-text.ts';

const uuid = z
  .uuid({ error: 'must be an id made on the phone, like 5f0c1c9e-6f0a-4c1e-9d5e-1b2a3c4d5e6f' })
  .toLowerCase();

function oneOf<const Words extends readonly [string, ...string[]]>(words: Words) {
  return z.enum(words, { error: `must be one of: ${words.join(', ')}` });
}

function wholeNumber(least: number, most: number, meaning: string) {
  const message = `must be a whole number ${least} to ${most} (${meaning})`;
  const digits = z
    .string()
    .trim()
    .regex(/^\d{1,6}$/, message)
    .transform(Number);
  return z.union([z.number(), digits], { error: message }).pipe(
    z
      .number({ error: message })
      .int(message)
      .min(least, message)
      .max(most, message)
      .transform((value) => value + 0),
  );
}

function amount(kind: AmountKind, range: { least: number; most: number; meaning: string }) {
  const message = `must be a number ${range.least} to ${range.most} (${range.meaning}), such as 7.5 or 7,5`;
  const typed = z.string().transform((text, context) => {
    const value = parseAmount(text, kind);
    if (value !== undefined) return value;
    context.addIssue({ code: 'custom', message });
    return z.NEVER;
  });
  return z.union([z.number(), typed], { error: message }).pipe(
    // + 0 turns -0 into 0
    z
      .number({ error: message })
      .min(range.least, message)
      .max(range.most, message)
      .transform((value) => value + 0),
  );
}

const setValue = amount('seconds', { least: -1_000, most: 36_000, meaning: 'seconds, reps, degrees or cm' });

const set = z.strictObject({
  rungId: uuid,
  side: oneOf(SIDES),
  index: wholeNumber(1, 100, 'number of the set'),
  planned: setValue.nullable().default(null),
  value: setValue.nullable(),
  tried: wholeNumber(0, 1_000, 'tries').nullable().default(null),
  how: oneOf(['typed', 'timed', 'as-planned', 'not-done']),
  clean: z.boolean({ error: 'must be true or false' }).default(true),
  faults: z.array(oneOf(FAULTS)).max(FAULTS.length).default([]),
  support: oneOf(SUPPORTS).nullable().default(null),
  addedKg: amount('kg', { least: -300, most: 500, meaning: 'kg; less than 0 is help' })
    .nullable()
    .default(null),
});

const pain = z.strictObject({
  region: oneOf(PAIN_REGIONS),
  side: oneOf(PAIN_SIDES),
  moment: oneOf(PAIN_MOMENTS),
  value: wholeNumber(0, 10, 'pain score'),
  kind: oneOf(PAIN_KINDS),
  usual: z
    .boolean({ error: 'must be true (the usual), false (new) or null (not said)' })
    .nullable()
    .default(null),
});

const dangerSign = z.strictObject({
  sign: oneOf(DANGER_SIGNS),
  goneWithinMinute: z.boolean({ error: 'must be true or false' }).default(false),
  region: oneOf(PAIN_REGIONS).nullable().default(null),
  side: oneOf(PAIN_SIDES).nullable().default(null),
});

const instant = z.iso.datetime({ offset: true, error: 'must be an instant such as 2026-11-24T18:42:00Z' });

/** What the phone sends: one training or one day without. The contract of POST /api/check-ins. */
export const checkInSchema = z
  .strictObject({
    id: uuid,
    date: z
      .string({ error: 'must be a date such as 2026-11-24' })
      .refine(isLocalDate, 'must be a date that exists, from 2000 on, written like 2026-11-24'),
    zone: z
      .string({ error: 'must be a time zone' })
      .refine(isZone, 'must be a time zone such as Europe/Lisbon'),
    kind: oneOf(['training', 'rest']),
    session: plainText
      .pipe(z.string().min(1, 'must not be empty').max(50, 'must be 50 characters or less'))
      .nullable()
      .default(null),
    planVersion: wholeNumber(1, 100_000, 'version of the plan').nullable().default(null),
    startedAt: instant.nullable().default(null),
    /** When Send was pressed: stays the same however often it is tried. */
    sentAt: instant.nullable().default(null),
    effort: wholeNumber(0, 10, 'how hard, 0 rest to 10 maximal').nullable().default(null),
    minutes: wholeNumber(0, 600, 'how long, minutes').nullable().default(null),
    ground: oneOf(GROUNDS).nullable().default(null),
    sleepHours: amount('count', { least: 0, most: 24, meaning: 'hours of sleep' }).nullable().default(null),
    nothingHurts: z.boolean({ error: 'must be true or false' }).default(false),
    sets: z.array(set, { error: 'must be a list of sets' }).max(200, 'has more than 200 sets').default([]),
    pain: z
      .array(pain, { error: 'must be a list of pain scores' })
      .max(100, 'has more than 100 scores')
      .default([]),
    dangerSigns: z.array(dangerSign, { error: 'must be a list' }).max(DANGER_SIGNS.length).default([]),
    words: plainText.default(''),
    question: plainText
      .nullable()
      .default(null)
      .transform((text) => text || null),
    correctsId: uuid.nullable().default(null),
    /** Unusual values that the client looked at and meant. */
    confirmed: z
      .array(oneOf(['old-date', 'long-hold', 'heavy']))
      .max(3)
      .default([]),
  })
  .superRefine(checkWholeBody);

export type CheckInBody = z.infer<typeof checkInSchema>;
export type CheckInInput = z.input<typeof checkInSchema>;
