import { z } from 'zod';
import { ladderAbout, libraryName } from './ladder.ts';

const ids = z.array(z.uuid()).max(500);
const shelf = z.enum(['skill', 'part']);

/** A change to the shelves of the library: skills, their parts, the order of ladders in a part. */
export const outlineChange = z.discriminatedUnion('act', [
  z.strictObject({ act: z.literal('add-skill'), name: libraryName }),
  z.strictObject({ act: z.literal('add-part'), skillId: z.uuid('choose a skill'), name: libraryName }),
  z.strictObject({
    act: z.literal('rename'),
    shelf,
    id: z.uuid(),
    /** The name as the coach had it open. */
    was: z.string().max(500),
    name: libraryName,
  }),
  z.strictObject({ act: z.enum(['retire', 'put-back']), shelf, id: z.uuid() }),
  z.strictObject({
    act: z.literal('order'),
    shelf: z.enum(['skill', 'part', 'ladder']),
    /** Those in use on one shelf, as the coach had them open, and as they shall stand. */
    was: ids,
    order: ids,
  }),
]);
export type OutlineChange = z.infer<typeof outlineChange>;

/** A new ladder, without rungs yet. */
export const newLadder = ladderAbout;
export type NewLadder = z.infer<typeof newLadder>;
