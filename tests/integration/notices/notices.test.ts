import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { POST as postMail } from '#app/api/notices/mail/route.ts';
import { POST as postPhoneOff } from '#app/api/notices/push/off/route.ts';
import { POST as postPhone } from '#app/api/notices/push/route.ts';
import { vapidKeys } from '#lib/push/vapid-keys.ts';
import { checkInWordsSchema } from '#lib/schemas/check-in-words.ts';
import { answerQuestion } from '#lib/usecases/answer-question.ts';
import { askQuestion } from '#lib/usecases/ask-question.ts';
import { deliverNotices } from '#lib/usecases/deliver-notices.ts';
import { loadNotices } from '#lib/usecases/load-notices.ts';
import { sayOnCheckIn } from '#lib/usecases/say-on-check-in.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { undoAct } from '#lib/usecases/undo-act.ts';
import { openReason } from '../board/board-rows.ts';
import { anotherPhone, aPhone, aTraining, NOW, type Phone } from '../check-in/arrange.ts';
import { leadOf } from '../clients/support.ts';
import { makeTestTeam, ownerQuery } from '../support/database.ts';
import { browserRequest, cookieFor, noParams } from '../support/signing-in.ts';
import { claimsOf } from './claims-of.ts';
import { openPushService, type PushService } from './push-service.ts';

process.env.PLUMBLINE_PUSH_LOCAL = '1';
const MINUTE = 60_000;
const minutesOn = (minutes: number) => new Date(NOW.getTime() + minutes * MINUTE);
const TEXT = 'Rest the sore wrist.';

let home: Phone;
let service: PushService;
beforeAll(async () => {
  home = await aPhone('Notices');
  service = await openPushService();
});
afterAll(() => service.close());
beforeEach(() => {
  service.status = 201;
  service.pushed.length = 0;
});

type Client = Awaited<ReturnType<typeof anotherPhone>>;
const post = async (route: typeof postPhone, path: string, client: Client, json: unknown) =>
  (
    await route(
      browserRequest(`/api/notices/${path}`, { cookie: await cookieFor(client.actor.userId), json }),
      noParams,
    )
  ).status;
const turnOn = (client: Client, json: unknown) => post(postPhone, 'push', client, json);
const turnOff = (client: Client, endpoint: string) => post(postPhoneOff, 'push/off', client, { endpoint });
const mail = (client: Client, on: boolean) => post(postMail, 'mail', client, { on });

async function answered({ actor, clientId }: Client) {
  const id = crypto.randomUUID();
  await askQuestion(actor, { id, text: 'My wrist is sore. What now?' }, NOW);
  return answerQuestion(leadOf(home.team), { clientId, questionId: id, text: TEXT }, NOW);
}
const rowsOf = (clientId: string) =>
  ownerQuery<{ kind: string; sent: boolean; attempts: number; error: string | null; body: unknown }>(
    `select kind, sent_at is not null as sent, attempts, last_error as error, body from outbox
     where client_id = $1 and kind <> 'after-check-in' order by kind, id`,
    [clientId],
  );
const give = (clientId: string, email: string) =>
  ownerQuery('update client set email = $2 where id = $1', [clientId, email]);

test('nothing is chosen at first, and nothing is sent', async () => {
  const client = await anotherPhone(home.team, 'Off');
  await give(client.clientId, 'off@client.example');
  expect(await loadNotices(client.actor)).toEqual({
    email: 'off@client.example',
    mail: false,
    endpoints: [],
    pushKey: vapidKeys().publicKey,
  });
  await answered(client);
  expect(await deliverNotices(NOW)).toBe(0);
  expect(await rowsOf(client.clientId)).toEqual([]);
  expect(service.pushed).toEqual([]);
});

test('an answer reaches every phone of the client once, signed, for three days, without a word of it', async () => {
  const client = await anotherPhone(home.team, 'On');
  const mate = await anotherPhone(home.team, 'Mate');
  expect(await turnOn(client, service.phone('on-1'))).toBe(204);
  expect(await turnOn(client, service.phone('on-2'))).toBe(204);
  expect(await turnOn(mate, service.phone('mate'))).toBe(204);
  await answered(client);
  const rows = await rowsOf(client.clientId);
  expect(rows).toMatchObject([
    { kind: 'push', sent: false },
    { kind: 'push', sent: false },
  ]);
  expect(rows[0]?.body).toMatchObject({
    title: 'An answer from Lead',
    text: 'On your Answers page.',
  });
  expect(JSON.stringify(rows)).not.toMatch(/wrist|sore/i);
  expect(await deliverNotices(NOW)).toBe(2);
  expect(await deliverNotices(minutesOn(60))).toBe(0);
  expect(service.pushed.map((each) => each.path).sort()).toEqual(['/phone/on-1', '/phone/on-2']);
  const [first] = service.pushed;
  expect(first?.headers).toMatchObject({ ttl: '259200', urgency: 'normal', 'content-encoding': 'aes128gcm' });
  expect(first?.headers.topic).toMatch(/^[0-9a-f]{32}$/);
  expect(first?.body.length).toBeGreaterThan(100);
  expect(first?.body.includes('answer')).toBe(false);
  expect(claimsOf(first?.headers.authorization)).toEqual({
    aud: new URL(service.phone('x').endpoint).origin,
    sub: 'mailto:nobody@localhost',
  });
});

test('words on a check-in are told as words', async () => {
  const client = await anotherPhone(home.team, 'Words');
  await turnOn(client, service.phone('words'));
  const body = aTraining(home);
  await submitCheckIn(client.actor, body, NOW);
  const words = checkInWordsSchema.parse({ set: null, text: TEXT });
  await sayOnCheckIn(leadOf(home.team), { clientId: client.clientId, checkInId: body.id, words }, NOW);
  expect(await rowsOf(client.clientId)).toMatchObject([
    { body: { title: 'Words from Lead', text: 'On your Answers page.' } },
  ]);
  expect(await deliverNotices(NOW, home.team.teamId)).toBe(1);
});

test.each([404, 410])('%i of the push service forgets that phone alone', async (status) => {
  const client = await anotherPhone(home.team, `Gone ${status}`);
  const mate = await anotherPhone(home.team, `Mate ${status}`);
  await turnOn(client, service.phone(`gone-${status}`));
  await turnOn(mate, service.phone(`mate-${status}`));
  await answered(client);
  service.status = status;
  expect(await deliverNotices(NOW)).toBe(0);
  expect((await loadNotices(client.actor))?.endpoints).toEqual([]);
  expect((await loadNotices(mate.actor))?.endpoints).toHaveLength(1);
  expect(await rowsOf(client.clientId)).toMatchObject([
    { sent: true, error: expect.stringContaining('no more') },
  ]);
  expect(await deliverNotices(minutesOn(60))).toBe(0);
  expect(service.pushed).toHaveLength(1);
});

test('another failure is tried again, later and later, until it is taken', async () => {
  const client = await anotherPhone(home.team, 'Retry');
  await turnOn(client, service.phone('retry'));
  await answered(client);
  service.status = 503;
  await deliverNotices(NOW);
  await deliverNotices(NOW);
  expect(service.pushed).toHaveLength(1);
  await deliverNotices(minutesOn(1));
  await deliverNotices(minutesOn(2));
  expect(service.pushed).toHaveLength(2);
  expect(await rowsOf(client.clientId)).toMatchObject([
    { sent: false, attempts: 2, error: 'the push service answered 503' },
  ]);
  service.status = 201;
  expect(await deliverNotices(minutesOn(3))).toBe(1);
  expect(await rowsOf(client.clientId)).toMatchObject([{ sent: true, attempts: 3, error: null }]);
  expect((await loadNotices(client.actor))?.endpoints).toHaveLength(1);
});

test('what nobody took within three days is given up', async () => {
  const client = await anotherPhone(home.team, 'Old');
  await turnOn(client, service.phone('old'));
  await answered(client);
  expect(await deliverNotices(minutesOn(3 * 24 * 60 + 1))).toBe(0);
  expect(service.pushed).toEqual([]);
  expect(await rowsOf(client.clientId)).toMatchObject([{ sent: true, error: 'given up after 3 days' }]);
});

test('on and off again by one post each; off ends what waits; a mate cannot switch it off', async () => {
  const client = await anotherPhone(home.team, 'Round');
  const mate = await anotherPhone(home.team, 'Not theirs');
  const phone = service.phone('round');
  await turnOn(client, phone);
  await turnOn(client, phone);
  expect(await turnOff(mate, phone.endpoint)).toBe(204);
  expect((await loadNotices(client.actor))?.endpoints).toEqual([phone.endpoint]);
  await answered(client);
  expect(await turnOff(client, phone.endpoint)).toBe(204);
  expect((await loadNotices(client.actor))?.endpoints).toEqual([]);
  expect(await deliverNotices(NOW)).toBe(0);
  expect(service.pushed).toEqual([]);
});

test('a browser tells whoever switched it on last, of another team too', async () => {
  const before = await anotherPhone(home.team, 'Before');
  const after = await anotherPhone(await makeTestTeam('Elsewhere'), 'After');
  const phone = service.phone('shared');
  await turnOn(before, phone);
  expect(await turnOn(after, phone)).toBe(204);
  expect((await loadNotices(before.actor))?.endpoints).toEqual([]);
  expect((await loadNotices(after.actor))?.endpoints).toEqual([phone.endpoint]);
});

test('by mail once it is switched on and an address is known, and not after', async () => {
  const client = await anotherPhone(home.team, 'Mail');
  expect(await mail(client, true)).toBe(409);
  await give(client.clientId, 'mail@client.example');
  expect(await mail(client, true)).toBe(204);
  expect(await loadNotices(client.actor)).toMatchObject({ mail: true });
  await answered(client);
  expect(await mail(client, false)).toBe(204);
  await answered(client);
  const rows = await rowsOf(client.clientId);
  expect(rows).toMatchObject([
    {
      kind: 'mail',
      body: {
        to: 'mail@client.example',
        subject: 'An answer from Lead',
        text: expect.stringContaining('http://localhost:3000/answers'),
      },
    },
  ]);
  expect(JSON.stringify(rows)).not.toMatch(/wrist|sore/i);
});

test('an answer that is taken back before its notices left tells nobody', async () => {
  const client = await anotherPhone(home.team, 'Undone');
  await give(client.clientId, 'undone@client.example');
  await turnOn(client, service.phone('undone'));
  await mail(client, true);
  await openReason(home.team, client.clientId, 'question-waiting');
  const { actId } = await answered(client);
  expect(await rowsOf(client.clientId)).toHaveLength(2);
  await undoAct(leadOf(home.team), { actId }, NOW);
  expect(await rowsOf(client.clientId)).toEqual([]);
});

test('what a client chose goes with the client', async () => {
  const client = await anotherPhone(await makeTestTeam('Erases'), 'Erased');
  await give(client.clientId, 'erased@client.example');
  await turnOn(client, service.phone('erased'));
  await mail(client, true);
  await ownerQuery('delete from client where id = $1', [client.clientId]);
  const left = await ownerQuery(
    'select client_id from push_subscription where client_id = $1 union all select client_id from client_notice where client_id = $1',
    [client.clientId],
  );
  expect(left).toEqual([]);
});
