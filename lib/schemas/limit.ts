import { z } from 'zod';
import { LIMIT_RULES, PAIN_REGIONS, PAIN_SIDES, TISSUES } from '#lib/domain/vocabulary.ts';
import { blankIsNull } from './typed.ts';

const date = z.iso.date('write the date as YYYY-MM-DD');
const optional = <Schema extends z.ZodType>(schema: Schema) =>
  z.preprocess(blankIsNull, schema.nullable()).default(null);

/** What a clinician or the coach has ruled out or reduced. Without a place it is about everything. */
export const limitSchema = z
  .strictObject({
    rule: z.enum(LIMIT_RULES, 'choose what is ruled out or reduced'),
    tissue: optional(z.enum(TISSUES, 'choose a tissue from the list')),
    region: optional(z.enum(PAIN_REGIONS, 'choose a region from the list')),
    side: optional(z.enum(PAIN_SIDES, 'choose left, right or middle')),
    percent: z
      .preprocess((value) => {
        const given = blankIsNull(value);
        return typeof given === 'string' ? Number(given.replace(',', '.')) : given;
      }, z.number('write a number').min(1, 'at least 1 %').max(99, 'at most 99 %').nullable())
      .default(null),
    from: date,
    until: optional(date),
    who: z
      .string()
      .trim()
      .min(1, 'say who set it: coach, physiotherapist, doctor')
      .max(120, 'at most 120 letters'),
    words: z.string().trim().max(1_000, 'at most 1,000 letters').default(''),
  })
  .superRefine((limit, context) => {
    const refuse = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    if (limit.tissue !== null && limit.region !== null)
      refuse('region', 'is one place too many: choose a tissue or a region');
    if (limit.rule === 'reduced' && limit.percent === null)
      refuse('percent', 'say to how many per cent of the sets');
    if (limit.rule !== 'reduced' && limit.percent !== null)
      refuse('percent', 'is only for “reduced”: leave it empty');
    if (limit.rule === 'no-upside-down' && (limit.side ?? limit.tissue ?? limit.region) !== null)
      refuse('side', 'stays empty: upside down is the whole body');
    if (limit.until !== null && limit.until < limit.from) refuse('until', 'is before the first day');
  });
export type LimitInput = z.infer<typeof limitSchema>;

/** The ids in the address of one limit. */
export const limitAddress = z.object({ clientId: z.uuid(), limitId: z.uuid() });
