import { z } from 'zod';
import { refusedNumbers } from '#lib/checks/thresholds/refused-numbers.ts';
import { plainText } from './plain-text.ts';

/** Changed numbers by id, the whole of what differs from what they are laid over. Each refusal names its number. */
const numbers = z.record(z.string().max(60), z.number({ error: 'must be a number' })).check((context) => {
  for (const [id, why] of refusedNumbers(context.value))
    context.issues.push({ code: 'custom', path: [id], message: why, input: context.value });
});

/** New numbers for the team, or for one client. */
export const settingsToSave = z.strictObject({
  values: numbers,
  why: plainText
    .refine((text) => text !== '', 'say in a few words why: whoever reads this later wants to know')
    .refine((text) => text.length <= 500, 'at most 500 characters'),
  /** The version that was on the screen. */
  baseVersion: z.int({ error: 'must be the version that was on the screen' }).min(0),
});
export type SettingsToSave = z.output<typeof settingsToSave>;

/** Numbers to try out over the nights of some clients at a time. */
export const settingsToReplay = z.strictObject({
  clientId: z.uuid({ error: 'must be the id of a client' }).nullable(),
  values: numbers,
  /** Clients that were replayed already. */
  skip: z.int({ error: 'must be a whole number' }).min(0).max(100_000).default(0),
});
export type SettingsToReplay = z.output<typeof settingsToReplay>;

/** The address of the page: for one client, or with the numbers of an earlier version in the fields. */
export const checksAddress = z.object({
  client: z.uuid().optional().catch(undefined),
  version: z.coerce.number().int().min(0).optional().catch(undefined),
  /** The version that was just saved: it can be taken back. */
  saved: z.coerce.number().int().min(1).optional().catch(undefined),
});
