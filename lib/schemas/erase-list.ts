import { z } from 'zod';

/** A line of the erase list: ids and times, no name. */
export const eraseLineSchema = z.object({
  teamId: z.uuid(),
  clientId: z.uuid(),
  receipt: z.string(),
  origin: z.string(),
  askedAt: z.iso.datetime(),
  erasedAt: z.iso.datetime(),
});
export type EraseLine = z.infer<typeof eraseLineSchema>;

/** The lines of a list, oldest first. A line that a crash cut short is left out: its deletion was taken back with it. */
export function parseEraseList(text: string): EraseLine[] {
  return text.split('\n').flatMap((each) => {
    try {
      const read = eraseLineSchema.safeParse(JSON.parse(each));
      return read.success ? [read.data] : [];
    } catch {
      return [];
    }
  });
}
