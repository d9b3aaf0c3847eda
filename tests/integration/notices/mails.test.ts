import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { deliverMailsJob } from '#lib/jobs/deliver-mails.ts';
import { answerQuestion } from '#lib/usecases/answer-question.ts';
import { askQuestion } from '#lib/usecases/ask-question.ts';
import { deliverMails } from '#lib/usecases/deliver-mails.ts';
import { mailSignInLink } from '#lib/usecases/sign-in-link.ts';
import { HANDLERS } from '#worker/handlers/by-name.ts';
import { anotherPhone, aPhone, NOW, type Phone } from '../check-in/arrange.ts';
import { leadOf } from '../clients/support.ts';
import { ownerQuery } from '../support/database.ts';
import { openMailServer } from './mail-server.ts';

// Read once, when the first mail is due.
const service = await openMailServer();
process.env.PLUMBLINE_MAIL_SERVER = service.address;
process.env.PLUMBLINE_MAIL_FROM = 'Plumbline <training@low-wall.example>';

const MINUTE = 60_000;
const minutesOn = (minutes: number) => new Date(NOW.getTime() + minutes * MINUTE);
let home: Phone;
beforeAll(async () => {
  home = await aPhone('Mails');
});
afterAll(() => service.close());
beforeEach(() => {
  service.status = 250;
  service.senderStatus = 250;
  service.onTaken = async () => undefined;
  service.taken.length = 0;
  service.tried = 0;
});

type Client = Awaited<ReturnType<typeof anotherPhone>>;
async function withMail(name: string, email: string): Promise<Client> {
  const client = await anotherPhone(home.team, name);
  await ownerQuery('update client set email = $2 where id = $1', [client.clientId, email]);
  await ownerQuery('insert into client_notice (team_id, client_id, mail) values ($1, $2, true)', [
    home.team.teamId,
    client.clientId,
  ]);
  return client;
}
async function answered({ actor, clientId }: Client): Promise<void> {
  const id = crypto.randomUUID();
  await askQuestion(actor, { id, text: 'My wrist is sore. What now?' }, NOW);
  await answerQuestion(leadOf(home.team), { clientId, questionId: id, text: 'Rest the sore wrist.' }, NOW);
}
const rowsOf = (clientId: string) =>
  ownerQuery<{ sent: boolean; attempts: number; error: string | null }>(
    `select sent_at is not null as sent, attempts, last_error as error from outbox
     where client_id = $1 and kind = 'mail' order by id`,
    [clientId],
  );
const idOf = (raw: string) => /^Message-ID: (.+)$/im.exec(raw)?.[1];

test('the notice of an answer goes out once, and says nothing of what was answered', async () => {
  const client = await withMail('Once', 'once@client.example');
  await answered(client);
  expect(await deliverMails(NOW)).toBe(1);
  expect(service.taken).toMatchObject([{ from: 'training@low-wall.example', to: ['once@client.example'] }]);
  const raw = service.taken[0]?.raw ?? '';
  expect(raw).toMatch(/^Subject: An answer from /m);
  expect(raw).toContain('/answers');
  expect(raw).not.toMatch(/wrist|sore|rest the/i);
  expect(await rowsOf(client.clientId)).toEqual([{ sent: true, attempts: 1, error: null }]);
  expect(await deliverMails(minutesOn(60))).toBe(0);
  expect(service.taken).toHaveLength(1);
});

test('a server that is busy is asked again later, for the same mail', async () => {
  const client = await withMail('Busy', 'busy@client.example');
  await answered(client);
  service.status = 451;
  expect(await deliverMails(NOW)).toBe(0);
  expect(await rowsOf(client.clientId)).toEqual([
    { sent: false, attempts: 1, error: 'the mail server did not take it (451)' },
  ]);
  expect(await deliverMails(NOW)).toBe(0);
  expect(service.tried).toBe(1); // not at once
  service.status = 250;
  expect(await deliverMails(minutesOn(1))).toBe(1);
  const [row] = await ownerQuery<{ id: string }>(
    `select id from outbox where client_id = $1 and kind = 'mail'`,
    [client.clientId],
  );
  expect(idOf(service.taken[0]?.raw ?? '')).toContain(row?.id ?? 'no row');
});

test('an address that is refused for good is not asked again', async () => {
  const client = await withMail('Gone', 'gone@client.example');
  await answered(client);
  service.status = 550;
  expect(await deliverMails(NOW)).toBe(0);
  expect(await rowsOf(client.clientId)).toEqual([
    { sent: true, attempts: 0, error: 'the mail server refused it (550)' },
  ]);
  service.status = 250;
  expect(await deliverMails(minutesOn(60))).toBe(0);
  expect(service.tried).toBe(1);
});

test('a sender that is not allowed waits to be put right, and loses nothing', async () => {
  const client = await withMail('Settings', 'settings@client.example');
  await answered(client);
  service.senderStatus = 550;
  expect(await deliverMails(NOW)).toBe(0);
  expect(await rowsOf(client.clientId)).toEqual([
    { sent: false, attempts: 1, error: 'the mail server did not take it (550)' },
  ]);
  service.senderStatus = 250;
  expect(await deliverMails(minutesOn(1))).toBe(1);
});

test('what is sent is written down before the next goes out', async () => {
  const first = await withMail('First', 'first@client.example');
  const then = await withMail('Then', 'then@client.example');
  for (const client of [first, then]) await answered(client);
  const seen: boolean[] = [];
  service.onTaken = async () => {
    const rows = [...(await rowsOf(first.clientId)), ...(await rowsOf(then.clientId))];
    seen.push(rows.some((row) => row.sent));
  };
  expect(await deliverMails(NOW)).toBe(2);
  expect(seen).toEqual([false, true]);
});

test('a row that holds no mail holds up no other', async () => {
  const client = await withMail('Broken', 'broken@client.example');
  await answered(client);
  await ownerQuery(`update outbox set body = '{}' where client_id = $1 and kind = 'mail'`, [client.clientId]);
  const next = await withMail('Next', 'next@client.example');
  await answered(next);
  expect(await deliverMails(NOW)).toBe(1);
  expect(await rowsOf(client.clientId)).toMatchObject([{ sent: true, error: 'this is no mail' }]);
});

test('what waited for three days is given up', async () => {
  const client = await withMail('Late', 'late@client.example');
  await answered(client);
  expect(await deliverMails(minutesOn(3 * 24 * 60 + 1))).toBe(0);
  expect(service.tried).toBe(0);
  expect(await rowsOf(client.clientId)).toMatchObject([{ sent: true, error: 'given up after 3 days' }]);
});

test('the worker sends the link that was asked for', async () => {
  const client = await withMail('Link', 'link@client.example');
  await mailSignInLink('link@client.example', new Date());
  await HANDLERS.get(deliverMailsJob.name)?.({ after: crypto.randomUUID() });
  expect(service.taken.map(({ to }) => to)).toEqual([['link@client.example']]);
  expect(service.taken[0]?.raw.replaceAll('=\r\n', '')).toMatch(/\/join\//);
  expect(await rowsOf(client.clientId)).toMatchObject([{ sent: true }]);
});
