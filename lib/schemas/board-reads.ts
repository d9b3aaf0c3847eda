import { z } from 'zod';
import { TIERS } from '#lib/domain/vocabulary.ts';
import { boardFilter } from './board.ts';
import { plainText } from './plain-text.ts';

/** More rows of one group of the board under a filter. */
export const moreRows = boardFilter.extend({
  of: z.enum(TIERS, { error: 'must be now, today, this-week or good-news' }),
  /** The client of the last row that stands there; from the start without. */
  after: z.uuid({ error: 'must be the id of a client' }).optional(),
});

export const FOLDS = [
  'nothingNew',
  'gettingToKnow',
  'withClient',
  'aside',
  'questions',
  'notChecked',
] as const;
export type FoldName = (typeof FOLDS)[number];

/** All names of one fold. */
export const oneFold = boardFilter.extend({
  fold: z.enum(FOLDS, { error: `must be one of ${FOLDS.join(', ')}` }),
});

/** Whether the board is different from the one with this stamp. */
export const boardChanges = boardFilter.extend({ stamp: z.string().max(16).default('') });

const id = z.uuid({ error: 'must be the id of a view' });
const name = plainText
  .refine((text) => text !== '', 'give the view a name')
  .refine((text) => text.length <= 60, 'must be at most 60 characters');
/** A view is a filter of the board under a name. */
export const viewAct = z.discriminatedUnion(
  'act',
  [
    z.strictObject({
      act: z.literal('keep'),
      name,
      query: z.string({ error: 'must be the filter as the address says it' }).max(1_000),
    }),
    z.strictObject({ act: z.literal('rename'), id, name }),
    z.strictObject({ act: z.literal('delete'), id }),
  ],
  { error: 'act must be keep, rename or delete' },
);
export type ViewAct = z.output<typeof viewAct>;
