import { z } from 'zod';
import { AUDIT_KINDS } from '#lib/domain/kept-record.ts';
import { plainText } from './plain-text.ts';

const name = plainText.refine((text) => text.length <= 200, 'at most 200 letters');
const words = plainText.refine((text) => text.length <= 2_000, 'at most 2,000 letters');
/** A tick of a plain form, or a boolean of JSON. */
const tick = z
  .union([z.boolean(), z.literal('on')], 'must be ticked or left out')
  .transform((value) => value !== false)
  .default(false);

export const consentSchema = z.strictObject({
  version: z.string('must be the version of the text that was read').max(20),
  share: tick,
  /** Under 18: the parent or guardian who agrees. */
  guardian: name.default(''),
});
export type ConsentBody = z.infer<typeof consentSchema>;

export const erasureAskSchema = z.strictObject({
  /** Said a second time, on the page that says what goes. */
  sure: z.literal('yes', 'has to be confirmed on the second page: press the button there'),
});
export const leadErasureSchema = z.strictObject({
  sure: z.literal('yes', 'has to be confirmed: press the second button'),
  words: words.refine((text) => text !== '', 'say who asked for it, or why: it stands in the record of acts'),
});

/** What the law or a contract may ask for lies inside this; own choice. */
export const RETENTION_YEARS = { least: 1, most: 30 } as const;
/** Days for which a film is kept after a look at it; own choice. */
export const CLIP_DAYS = { least: 30, most: 3650 } as const;

export const retentionSchema = z.strictObject({
  years: z.coerce
    .number('must be a whole number of years')
    .int('must be a whole number of years')
    .min(RETENTION_YEARS.least, `must be at least ${RETENTION_YEARS.least} year`)
    .max(RETENTION_YEARS.most, `must be at most ${RETENTION_YEARS.most} years`),
  erases: tick,
  clipDays: z.coerce
    .number('must be a whole number of days')
    .int('must be a whole number of days')
    .min(CLIP_DAYS.least, `must be at least ${CLIP_DAYS.least} days`)
    .max(CLIP_DAYS.most, `must be at most ${CLIP_DAYS.most} days`)
    .optional(),
});

export const receiptAddress = z.object({ receipt: z.string().regex(/^[A-Z2-9]{5}(-[A-Z2-9]{5}){3}$/) });

export const auditFilter = z.object({
  kind: z.enum(AUDIT_KINDS).catch('all').default('all'),
  client: z.uuid().optional().catch(undefined),
  who: z.uuid().optional().catch(undefined),
  /** Where the page before ended: an instant and an id. */
  before: z
    .string()
    .regex(/^\d{4}-\d\d-\d\dT[\d:.]+Z_[0-9a-f-]{36}$/)
    .optional()
    .catch(undefined),
});
export type AuditFilter = z.infer<typeof auditFilter>;
