import { z } from 'zod';

const endpoint = z
  .string({ error: 'must be the address that the browser gave' })
  .max(1_000, 'is longer than 1,000 characters')
  .refine(
    (text) => URL.canParse(text) && new URL(text).username === '',
    'must be the address that the browser gave',
  );
const key = (bytes: number, what: string) => {
  const letters = Math.ceil((bytes * 4) / 3);
  return z
    .string({ error: `must be the ${what} that the browser gave` })
    .regex(new RegExp(`^[A-Za-z0-9_-]{${letters}}$`), `must be ${bytes} bytes as base64url without padding`);
};

/** What POST /api/notices/push takes: a subscription as browsers make it (RFC 8291). */
export const pushPhone = z.strictObject({
  endpoint,
  keys: z.strictObject({ p256dh: key(65, 'public key'), auth: key(16, 'shared secret') }),
});
export type PushPhone = z.output<typeof pushPhone>;

export const pushPhoneOff = z.strictObject({ endpoint });

export const mailNotice = z.strictObject({
  on: z.boolean({ error: 'must be true (mail me) or false (do not)' }),
});
