import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { POST as postWords } from '#app/api/clients/[clientId]/check-ins/[checkInId]/words/route.ts';
import { checkInWordsSchema } from '#lib/schemas/check-in-words.ts';
import { deleteCheckIn } from '#lib/usecases/delete-check-in.ts';
import { loadAnswers } from '#lib/usecases/load-answers.ts';
import { loadClient } from '#lib/usecases/load-client.ts';
import { loadEarlier } from '#lib/usecases/load-earlier.ts';
import { loadProgress } from '#lib/usecases/load-progress.ts';
import { loadToday } from '#lib/usecases/load-today.ts';
import { markCheckInSeen } from '#lib/usecases/mark-check-in-seen.ts';
import { markSeen } from '#lib/usecases/mark-seen.ts';
import { markWordsRead } from '#lib/usecases/mark-words-read.ts';
import { sayOnCheckIn } from '#lib/usecases/say-on-check-in.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { leadOf } from '../clients/support.ts';
import { makeTestTeam, ownerQuery } from '../support/database.ts';
import { browserRequest, cookieFor } from '../support/signing-in.ts';
import { anotherPhone, aPhone, aTraining, NOW, type Phone } from './arrange.ts';

const LATER = new Date(NOW.getTime() + 3_600_000);
let phone: Phone;
beforeAll(async () => {
  phone = await aPhone('Words');
});

const wordsOn = (set: unknown, text = 'Heels nearer.') => checkInWordsSchema.parse({ set, text });
const secondSet = () => ({ rungId: phone.rungs.get('H3.4'), side: 'both', index: 2 });
const countOf = async (clientId: string) =>
  ownerQuery<{ what: string }>(
    `select 'word' as what from coach_word where client_id = $1 union all select 'seen' from seen_mark where client_id = $1`,
    [clientId],
  );

async function trained(name: string) {
  const { actor, clientId } = await anotherPhone(phone.team, name);
  const body = aTraining(phone);
  await submitCheckIn(actor, body, NOW);
  return { actor, clientId, body, at: { clientId, checkInId: body.id } };
}
const entriesOf = async (clientId: string) =>
  (await loadClient(leadOf(phone.team), clientId, LATER))?.page.timeline ?? [];

test('words on the day and on a set stand on the client page, with an audit line that holds no words', async () => {
  const { clientId, at } = await trained('Both');
  await sayOnCheckIn(leadOf(phone.team), { ...at, words: wordsOn(null, 'A calm session.') }, NOW);
  await sayOnCheckIn(leadOf(phone.team), { ...at, words: wordsOn(secondSet()) }, LATER);
  const [entry] = await entriesOf(clientId);
  expect(entry?.said).toMatchObject([
    { about: '', text: 'A calm session.', who: 'Lead of Team of Words, Tue 24 Nov 20:00; not read yet' },
    { about: expect.stringMatching(/, set 2$/), text: 'Heels nearer.' },
  ]);
  const audit = await ownerQuery('select action, fields from audit where client_id = $1 and action = $2', [
    clientId,
    'words-written',
  ]);
  expect(audit).toEqual([
    { action: 'words-written', fields: ['text'] },
    { action: 'words-written', fields: ['text'] },
  ]);
});

test('seen is told of this check-in only, once a coach, with one audit line', async () => {
  const { actor, clientId, at } = await trained('Seen');
  await submitCheckIn(actor, aTraining(phone, { date: '2026-11-23', session: 'B' }), NOW);
  await markCheckInSeen(leadOf(phone.team), at, LATER);
  await markCheckInSeen(leadOf(phone.team), at, new Date(LATER.getTime() + 1_000));
  const entries = await entriesOf(clientId);
  expect(entries.map((entry) => entry.seen)).toEqual([
    'seen by Lead of Team of Words, Tue 24 Nov 21:00',
    'not seen yet',
  ]);
  expect(await countOf(clientId)).toEqual([{ what: 'seen' }]);
  expect(
    await ownerQuery('select 1 from audit where client_id = $1 and action = $2', [clientId, 'check-in-seen']),
  ).toHaveLength(1);
});

test('a look from the board is a look at everything that was sent by then', async () => {
  const { actor, clientId } = await trained('Board');
  await submitCheckIn(actor, aTraining(phone, { date: '2026-11-23', session: 'B' }), NOW);
  await markSeen(leadOf(phone.team), { clientId }, LATER);
  expect((await entriesOf(clientId)).map((entry) => entry.unseen)).toEqual([false, false]);
});

test('words stay with the day when the client corrects it; the correction has not been seen', async () => {
  const { actor, clientId, at, body } = await trained('Corrects');
  await sayOnCheckIn(leadOf(phone.team), { ...at, words: wordsOn(secondSet()) }, NOW);
  await markCheckInSeen(leadOf(phone.team), at, NOW);
  await submitCheckIn(actor, aTraining(phone, { correctsId: body.id, effort: 8 }), LATER);
  const entries = await entriesOf(clientId);
  expect(entries).toMatchObject([{ unseen: true, said: [{ text: 'Heels nearer.' }] }]);
  await expect(
    sayOnCheckIn(leadOf(phone.team), { ...at, words: wordsOn(null) }, LATER),
  ).rejects.toMatchObject({ code: 'conflict', message: expect.stringContaining('corrected') });
});

test('refused and nothing kept: deleted, of another client, a set of another check-in, of another team', async () => {
  const gone = await trained('Gone');
  await deleteCheckIn(gone.actor, gone.body.id, NOW);
  const mine = await trained('Mine');
  const mate = await trained('Mate');
  const elsewhere = leadOf(await makeTestTeam('Other team'));
  const lead = leadOf(phone.team);
  const say = (who = lead, at = mine.at, words = wordsOn(null)) => sayOnCheckIn(who, { ...at, words }, NOW);
  await expect(say(lead, gone.at)).rejects.toMatchObject({ code: 'conflict' });
  await expect(markCheckInSeen(lead, gone.at, NOW)).rejects.toMatchObject({ code: 'conflict' });
  await expect(say(lead, { ...mine.at, checkInId: mate.body.id })).rejects.toMatchObject({
    code: 'not-found',
  });
  await expect(say(lead, mine.at, wordsOn({ ...secondSet(), index: 9 }))).rejects.toMatchObject({
    code: 'invalid',
    fields: { set: expect.stringContaining('choose the day') },
  });
  await expect(say(elsewhere)).rejects.toMatchObject({ code: 'not-found' });
  await expect(markCheckInSeen(elsewhere, mine.at, NOW)).rejects.toMatchObject({ code: 'not-found' });
  for (const { clientId } of [gone, mine, mate]) expect(await countOf(clientId)).toEqual([]);
});

test('the phone says once that words were shown; nobody else’s phone can', async () => {
  const mine = await trained('Reads');
  const mate = await trained('Reads not');
  const { wordId } = await sayOnCheckIn(leadOf(phone.team), { ...mine.at, words: wordsOn(null) }, NOW);
  const readAt = () =>
    ownerQuery<{ at: Date | null }>('select read_at as at from coach_word where id = $1', [wordId]);
  await markWordsRead(mate.actor, [wordId], NOW);
  expect(await readAt()).toEqual([{ at: null }]);
  await markWordsRead(mine.actor, [wordId, randomUUID()], LATER);
  await markWordsRead(mine.actor, [wordId], new Date(LATER.getTime() + 60_000));
  expect(await readAt()).toEqual([{ at: LATER }]);
  expect((await entriesOf(mine.clientId))[0]?.said[0]?.who).toContain('read Tue 24 Nov 21:00');
});

test('on the phone they stand at the day and the set, on Today, earlier check-ins, answers and progress', async () => {
  const { actor, at } = await trained('Phone');
  await ownerQuery(
    `insert into placement (team_id, client_id, ladder_id, side, rung_id, from_date)
     select team_id, $2, ladder_id, 'both', id, '2026-11-01' from rung where team_id = $1 and id = $3`,
    [phone.team.teamId, at.clientId, phone.rungs.get('H3.4')],
  );
  await sayOnCheckIn(leadOf(phone.team), { ...at, words: wordsOn(null, 'A calm session.') }, NOW);
  await sayOnCheckIn(leadOf(phone.team), { ...at, words: wordsOn(secondSet()) }, LATER);
  await markCheckInSeen(leadOf(phone.team), at, LATER);
  const said = [
    { about: '', text: 'A calm session.', read: false },
    { about: expect.stringMatching(/, set 2$/), text: 'Heels nearer.' },
  ];
  const seen = { by: 'Lead of Team of Words', at: LATER.toISOString() };
  expect((await loadEarlier(actor, LATER)).rows).toMatchObject([{ said, seen }]);
  const today = await loadToday(actor, LATER);
  expect(today.done).toMatchObject([{ said, seen }]);
  expect(today.said).toMatchObject({
    text: 'Heels nearer.',
    on: expect.stringMatching(/^Tue 24 Nov, .*, set 2$/),
  });
  expect((await loadAnswers(actor)).said).toMatchObject([
    { on: expect.stringMatching(/, set 2$/), unread: true },
    { on: 'Tue 24 Nov, session A', unread: true },
  ]);
  expect((await loadProgress(actor, LATER)).ladders[0]?.said).toMatchObject({ text: 'Heels nearer.' });
});

test('the route: kept with 201, empty words name their field, another team’s coach finds nothing', async () => {
  const { at, clientId } = await trained('Route');
  const other = await makeTestTeam('Third team');
  const post = async (userId: string, json: unknown) =>
    postWords(
      browserRequest(`/api/clients/${at.clientId}/check-ins/${at.checkInId}/words`, {
        cookie: await cookieFor(userId),
        json,
      }),
      { params: Promise.resolve(at) },
    );
  const right = { set: null, text: 'Good line today.' };
  expect((await post(other.userId, right)).status).toBe(404);
  const empty = await post(phone.team.userId, { set: null, text: '  ' });
  expect(empty.status).toBe(400);
  expect(await empty.json()).toMatchObject({ error: { fields: { text: expect.stringContaining('empty') } } });
  expect(await countOf(clientId)).toEqual([]);
  expect((await post(phone.team.userId, right)).status).toBe(201);
});
