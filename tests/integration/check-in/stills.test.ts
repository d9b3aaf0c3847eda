import { randomUUID } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import sharp from 'sharp';
import { beforeAll, expect, test } from 'vitest';
import yauzl from 'yauzl';
import { POST as postStill } from '#app/api/questions/[questionId]/stills/[stillId]/route.ts';
import { GET as getStill } from '#app/api/stills/[stillId]/route.ts';
import type { Actor } from '#lib/auth/actor.ts';
import { addStill } from '#lib/usecases/add-still.ts';
import { askQuestion } from '#lib/usecases/ask-question.ts';
import { exportClient } from '#lib/usecases/export-client.ts';
import { loadAnswers } from '#lib/usecases/load-answers.ts';
import { loadBoard } from '#lib/usecases/load-board.ts';
import { loadStill } from '#lib/usecases/load-still.ts';
import { aPhoto, movingWebp, wideOpenPng } from '#tests/fixtures/pictures.ts';
import { leadOf } from '../clients/support.ts';
import { makeTestTeam, ownerQuery } from '../support/database.ts';
import { browserRequest, cookieFor, ORIGIN } from '../support/signing-in.ts';
import { anotherPhone, aPhone, NOW, type Phone } from './arrange.ts';

let phone: Phone;
beforeAll(async () => {
  phone = await aPhone('Stills');
});

async function asked(name: string): Promise<{ actor: Actor; clientId: string; questionId: string }> {
  const { actor, clientId } = await anotherPhone(phone.team, name);
  const { id } = await askQuestion(actor, { id: randomUUID(), text: 'Is this line straight?' }, NOW);
  return { actor, clientId, questionId: id };
}
const filesOf = (teamId: string) => {
  try {
    return readdirSync(join(process.env.PLUMBLINE_FILES ?? '', teamId));
  } catch {
    return [];
  }
};
const rowsOf = (questionId: string) =>
  ownerQuery('select id from question_still where question_id = $1', [questionId]);

async function upload(cookie: string, at: { questionId: string; stillId: string }, body: Uint8Array) {
  const request = new Request(`${ORIGIN}/api/questions/${at.questionId}/stills/${at.stillId}`, {
    method: 'POST',
    headers: { host: 'localhost:3000', origin: ORIGIN, cookie, 'content-type': 'image/jpeg' },
    body: new Uint8Array(body),
  });
  return postStill(request, { params: Promise.resolve(at) });
}
async function see(cookie: string | undefined, stillId: string) {
  const request = browserRequest(`/api/stills/${stillId}`, cookie ? { cookie } : {});
  return getStill(request, { params: Promise.resolve({ stillId }) });
}

test('sent once however often it is sent, without its place, seen by the client and every coach of the team only', async () => {
  const mine = await asked('Sends');
  const mate = await anotherPhone(phone.team, 'Mate');
  const other = await makeTestTeam('Other team');
  const stillId = randomUUID();
  const at = { questionId: mine.questionId, stillId };
  const cookie = await cookieFor(mine.actor.userId);
  expect((await upload(cookie, at, await aPhoto())).status).toBe(201);
  expect((await upload(cookie, at, await aPhoto())).status).toBe(201);
  expect(await rowsOf(mine.questionId)).toEqual([{ id: stillId }]);
  expect(filesOf(phone.team.teamId)).toContain(`${stillId}.jpg`);

  for (const who of [cookie, await cookieFor(phone.team.userId)]) {
    const answer = await see(who, stillId);
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toBe('image/jpeg');
    expect(answer.headers.get('cache-control')).toBe('private, no-store');
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
    const { exif, width } = await sharp(Buffer.from(await answer.arrayBuffer())).metadata();
    expect([exif, width]).toEqual([undefined, 40]);
  }
  expect((await see(undefined, stillId)).status).toBe(401);
  expect((await see(await cookieFor(mate.actor.userId), stillId)).status).toBe(404);
  expect((await see(await cookieFor(other.userId), stillId)).status).toBe(404);
  expect((await see(cookie, randomUUID())).status).toBe(404);
});

test('it stands beside the question: on the phone, on the board, in the export', async () => {
  const { actor, clientId, questionId } = await asked('Beside');
  const stillId = randomUUID();
  await addStill(actor, { questionId, stillId, bytes: await aPhoto() }, NOW);
  expect((await loadAnswers(actor)).open).toMatchObject([{ stills: [stillId] }]);
  const board = await loadBoard(leadOf(phone.team), {}, NOW);
  const row = board.groups.flatMap((group) => group.rows).find((one) => one.clientId === clientId);
  expect(row?.questions).toMatchObject([{ stills: [stillId] }]);
  const { zip } = await exportClient(leadOf(phone.team), clientId, NOW);
  const names = new Map<string, Buffer>();
  const read = await yauzl.fromBufferPromise(await buffer(zip));
  for await (const entry of read.eachEntry())
    names.set(entry.fileName, await buffer(await read.openReadStreamPromise(entry)));
  expect(names.get('data/tables/questions.csv')?.toString()).toContain(`stills/${stillId}.jpg`);
  expect(await sharp(names.get(`data/stills/${stillId}.jpg`)).metadata()).toMatchObject({ format: 'jpeg' });
});

test('three a question; the fourth is refused, also when all come at once', async () => {
  const { actor, questionId } = await asked('Many');
  const bytes = await aPhoto();
  const sent = await Promise.allSettled(
    Array.from({ length: 5 }, () => addStill(actor, { questionId, stillId: randomUUID(), bytes }, NOW)),
  );
  expect(sent.filter((one) => one.status === 'fulfilled')).toHaveLength(3);
  expect(await rowsOf(questionId)).toHaveLength(3);
  await expect(addStill(actor, { questionId, stillId: randomUUID(), bytes }, NOW)).rejects.toMatchObject({
    code: 'conflict',
    fields: { still: expect.stringContaining('one too many') },
  });
});

test.each<[string, number, () => Uint8Array | Promise<Uint8Array>]>([
  ['a text file named .jpg', 400, () => Buffer.from('no picture')],
  ['0 bytes', 400, () => new Uint8Array()],
  ['20,000 px', 400, () => wideOpenPng(20_000)],
  ['an animation', 400, () => movingWebp(30)],
  ['more than 10 MB', 413, () => Buffer.alloc(10 * 1024 * 1024 + 1, 0xff)],
])('%s is refused with a reason, and nothing is kept', async (name, status, make) => {
  const { actor, questionId } = await asked(name);
  const before = filesOf(phone.team.teamId);
  const answer = await upload(
    await cookieFor(actor.userId),
    { questionId, stillId: randomUUID() },
    await make(),
  );
  expect(answer.status).toBe(status);
  const { error } = (await answer.json()) as { error: { message: string } };
  expect(error.message.length).toBeGreaterThan(20);
  expect(await rowsOf(questionId)).toEqual([]);
  expect(filesOf(phone.team.teamId)).toEqual(before);
});

test('nobody attaches to somebody else’s question, takes an id that is in use, or sees without the file', async () => {
  const [mine, mate] = [await asked('Mine'), await asked('Other')];
  const [stillId, bytes] = [randomUUID(), await aPhoto()];
  const add = (actor: Actor, questionId: string) => addStill(actor, { questionId, stillId, bytes }, NOW);
  await expect(add(mate.actor, mine.questionId)).rejects.toMatchObject({ code: 'not-found' });
  await expect(add(leadOf(phone.team), mine.questionId)).rejects.toMatchObject({ code: 'forbidden' });
  await add(mine.actor, mine.questionId);
  await expect(add(mate.actor, mate.questionId)).rejects.toMatchObject({ code: 'conflict' });
  await ownerQuery('update question_still set storage_key = $2 where id = $1', [
    stillId,
    `${randomUUID()}/${stillId}.jpg`,
  ]);
  await expect(loadStill(mine.actor, stillId)).rejects.toMatchObject({ code: 'not-found' });
});
