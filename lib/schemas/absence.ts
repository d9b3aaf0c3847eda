import { z } from 'zod';
import { daysBetween, isLocalDate } from '#lib/domain/local-date.ts';

/** Longest absence said at once: days (own choice, a year). */
const LONGEST_DAYS = 366;
const date = z
  .string({ error: 'must be a date such as 2026-11-24' })
  .refine(isLocalDate, 'must be a date that exists, from 2000 on, written like 2026-11-24');

/** Time away, said before or after: known days without training. `to` null: not known yet. */
export const absenceSchema = z
  .strictObject({
    id: z.uuid({ error: 'must be an id made on the phone' }).toLowerCase(),
    kind: z.enum(['pause', 'holiday', 'illness'], { error: 'must be one of: pause, holiday, illness' }),
    from: date,
    to: date.nullable().default(null),
  })
  .superRefine(({ from, to }, context) => {
    if (to === null) return;
    const days = daysBetween(from, to);
    if (days < 0)
      context.addIssue({ code: 'custom', path: ['to'], message: 'must not be before the first day' });
    if (days > LONGEST_DAYS) {
      context.addIssue({
        code: 'custom',
        path: ['to'],
        message: 'must be within a year of the first day, or be left open',
      });
    }
  });
export type AbsenceBody = z.infer<typeof absenceSchema>;
