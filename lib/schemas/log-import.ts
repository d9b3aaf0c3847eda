import { z } from 'zod';
import { PAIN_REGIONS, PAIN_SIDES } from '#lib/domain/vocabulary.ts';
import { LOG_COLUMNS, ONCE } from '#lib/views/old-log/log-columns.ts';

const text = z.string('paste the log or choose a file').min(1, 'paste the log or choose a file');

const columns = z
  .array(z.enum(LOG_COLUMNS, { error: `must be one of: ${LOG_COLUMNS.join(', ')}` }))
  .max(100)
  .superRefine((chosen, context) => {
    const say = (message: string) => context.addIssue({ code: 'custom', message });
    const twice = ONCE.find((column) => chosen.filter((one) => one === column).length > 1);
    if (twice) say(`two columns are “${twice}”: keep one of them`);
    if (!chosen.includes('date')) say('no column is the day: say which one it is');
  });

const mapping = z.strictObject({
  columns,
  dateOrder: z.enum(['year-first', 'day-first', 'month-first'], {
    error: 'say how dates are written: year, day or month first',
  }),
  drills: z
    .array(z.strictObject({ word: z.string().min(1).max(500), rungId: z.uuid().nullable() }))
    .max(1_000, 'has more than 1,000 different drills'),
  pain: z
    .strictObject({ region: z.enum(PAIN_REGIONS), side: z.enum(PAIN_SIDES) })
    .nullable()
    .default(null),
});

/** What to do with an old training log. `look` and `check` write nothing. */
export const logImport = z.discriminatedUnion(
  'do',
  [
    z.strictObject({ do: z.literal('look'), text, columns: columns.optional() }),
    z.strictObject({ do: z.literal('check'), text, mapping }),
    z.strictObject({ do: z.literal('take'), text, mapping }),
    z.strictObject({ do: z.literal('undo'), importId: z.uuid() }),
  ],
  { error: 'do must be look, check, take or undo' },
);
