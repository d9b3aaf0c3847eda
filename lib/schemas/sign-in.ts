import { z } from 'zod';

/** Too long for an address or a password is simply wrong; the shape is all that is checked here. */
export const passwordSignIn = z.strictObject({
  email: z
    .string('email must be a text: the e-mail address')
    .max(254, 'email must have at most 254 characters'),
  password: z.string('password must be a text').max(128, 'password must have at most 128 characters'),
});

export const linkRequest = z.strictObject({
  email: z
    .email('email must be an e-mail address such as ana@example.org')
    .max(254, 'email must have at most 254 characters'),
});

export const entryToken = z.strictObject({
  token: z.string('token must be a text').max(200, 'token must have at most 200 characters'),
});

export const demoPhone = z.strictObject({
  clientId: z.uuid('clientId must be the id of a client of the demo team'),
});
