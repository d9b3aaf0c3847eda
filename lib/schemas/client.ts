import { z } from 'zod';
import { isZone } from '#lib/domain/local-date.ts';
import { PAIN_REGIONS, PAIN_SIDES, STANDINGS } from '#lib/domain/vocabulary.ts';
import { blankIsNull } from './typed.ts';

/** A number from a form field: text is read, blank is null. */
const optionalNumber = (schema: z.ZodType<number>) =>
  z.preprocess((value) => {
    const given = blankIsNull(value);
    return typeof given === 'string' ? Number(given.replace(',', '.')) : given;
  }, schema.nullable());

export const newClientSchema = z.strictObject({
  name: z.string().trim().min(1, 'say the name of the client').max(120, 'at most 120 letters'),
  email: z.preprocess(
    blankIsNull,
    z.email('is not an e-mail address; leave it empty to copy the link yourself').max(200).nullable(),
  ),
  zone: z.string().refine(isZone, 'choose a time zone from the list'),
  under18: z.boolean().default(false),
  goal: z.string().trim().max(500, 'at most 500 letters').default(''),
  usualSessionMinutes: optionalNumber(
    z.int('whole minutes').min(5, 'at least 5 minutes').max(300, 'at most 300 minutes'),
  ),
  toldWeek: z
    .strictObject({
      days: optionalNumber(z.number().min(0, 'between 0 and 14 days').max(14, 'between 0 and 14 days')),
      minutes: optionalNumber(
        z.number().min(0, 'between 0 and 300 minutes').max(300, 'between 0 and 300 minutes'),
      ),
      effort: optionalNumber(z.number().min(0, 'between 0 and 10').max(10, 'between 0 and 10')),
    })
    .optional(),
});
export type NewClient = z.infer<typeof newClientSchema>;

export const standingSchema = z.strictObject({
  standing: z.enum(STANDINGS, `choose one of: ${STANDINGS.join(', ')}`),
  from: z.preprocess(
    (value) => (value === '' ? undefined : value),
    z.iso.date('write the date as YYYY-MM-DD').optional(),
  ),
  why: z.string().trim().max(500, 'at most 500 letters').default(''),
});
export const standingChangeSchema = z.strictObject({ changeId: z.uuid('must be the id of a change') });

const optionalDate = z.preprocess(blankIsNull, z.iso.date('write the date as YYYY-MM-DD').nullable());
export const clinicianWordSchema = z
  .strictObject({
    date: z.iso.date('write the date as YYYY-MM-DD'),
    region: z.preprocess(blankIsNull, z.enum(PAIN_REGIONS, 'choose a region from the list').nullable()),
    side: z.preprocess(blankIsNull, z.enum(PAIN_SIDES, 'choose left, right or middle').nullable()),
    words: z.string().trim().min(1, 'write what the clinician said').max(2_000, 'at most 2,000 letters'),
    reviewOn: optionalDate.default(null),
  })
  .refine((word) => word.reviewOn === null || word.reviewOn >= word.date, {
    path: ['reviewOn'],
    message: 'is before the day of the clinician’s word',
  });
export type ClinicianWordInput = z.infer<typeof clinicianWordSchema>;

export const noteSchema = z.strictObject({
  text: z.string().trim().min(1, 'write the note first').max(5_000, 'at most 5,000 letters'),
});
