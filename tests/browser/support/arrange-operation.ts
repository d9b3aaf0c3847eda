import { randomUUID } from 'node:crypto';
import { aPhone, aTraining } from '#tests/integration/check-in/arrange.ts';
import { cookieFor } from '#tests/integration/support/signing-in.ts';

/** A client with a signed-in phone in the database of the environment, and check-ins to send: one line of JSON. */
const phone = await aPhone('Operation');
const cookie = await cookieFor(phone.actor.userId);
const today = new Date().toISOString().slice(0, 10);
const training = (words: string, session: string) =>
  aTraining(phone, { id: randomUUID(), date: today, zone: 'UTC', session, words });
const bodies = ['A', 'B', 'C'].map((session) => training('Zwirbelknochen', session));
process.stdout.write(`${JSON.stringify({ cookie, clientId: phone.clientId, bodies })}\n`);
process.exit(0);
