import { z } from 'zod';

const text = z.string('paste the list or choose a file').min(1, 'paste the list or choose a file');

/** What to do with a pasted list. `check` writes nothing. */
export const clientImport = z.discriminatedUnion(
  'do',
  [
    z.strictObject({ do: z.literal('check'), text }),
    z.strictObject({
      do: z.literal('import'),
      text,
      /** `sameName`: a client of this name is there, and this is somebody else. */
      rows: z
        .array(z.strictObject({ line: z.int().min(2), sameName: z.boolean().default(false) }))
        .min(1, 'tick at least one row')
        .max(500),
      /** `mail`: the sign-in link goes to those who have an address; `show`: all of them are shown, once. */
      links: z.enum(['mail', 'show', 'later'], 'must be mail, show or later'),
    }),
  ],
  { error: 'do must be check or import' },
);
export type ClientImport = z.output<typeof clientImport>;
