import { z } from 'zod';
import { DECISIONS } from './record-decisions.ts';
import { PEOPLE } from './record-people.ts';
import { TRAINING } from './record-training.ts';

/**
 * record.json of a pack: every row that is kept about a client, by table, with its ids, and the ladders as they were read.
 * Beside history.json, which programs read, this is what another team takes a client in from.
 */
export const packRecordSchema = z.strictObject({
  formatVersion: z.literal(1, 'must be 1, the version this program reads: make the pack again'),
  /** First and last local date that rows belong to; `from` null: from the first day on. */
  period: z.strictObject({ from: z.iso.date().nullable(), to: z.iso.date() }),
  ...PEOPLE,
  ...TRAINING,
  ...DECISIONS,
});
export type PackRecord = z.infer<typeof packRecordSchema>;
