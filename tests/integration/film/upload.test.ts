import { existsSync, mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Upload } from 'tus-js-client';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { GET as playClip } from '#app/api/clips/[clipId]/film/route.ts';
import { clipKey, PIECE_BYTES } from '#lib/files/clip-pieces.ts';
import { fileStore } from '#lib/files/file-store.ts';
import { closeQueues } from '#lib/jobs/queue.ts';
import { checkClip } from '#lib/usecases/film/check-clip.ts';
import { handOnClips } from '#lib/usecases/film/hand-on-clips.ts';
import { sweepClips } from '#lib/usecases/film/sweep-clips.ts';
import { prepareQueue } from '#lib/usecases/prepare-queue.ts';
import { aFilm } from '#tests/fixtures/films.ts';
import { anotherPhone, aPhone, type Phone } from '../check-in/arrange.ts';
import { makeTestTeam, ownerQuery } from '../support/database.ts';
import { browserRequest, cookieFor } from '../support/signing-in.ts';
import { newId, openServer, uploader } from './arrange.ts';

let phone: Phone;
let rungId: string;
let cookie: string;
let film: Buffer;
let server: Awaited<ReturnType<typeof openServer>>;
beforeAll(async () => {
  phone = await aPhone('Films');
  rungId = phone.rungs.get('H3.4') ?? '';
  cookie = await cookieFor(phone.actor.userId);
  film = await aFilm({ seconds: 2 });
  await prepareQueue();
  server = await openServer();
}, 60_000);
afterAll(async () => {
  await server.close();
  await closeQueues();
});

const about = (id: string, more: Record<string, string> = {}) => ({ id, rungId, side: 'both', ...more });
const rowOf = async (id: string) =>
  (await ownerQuery<Record<string, unknown>>('select * from clip where id = $1', [id]))[0];
const filesOf = (id: string) =>
  readdirSync(join(process.env.PLUMBLINE_FILES ?? '', phone.team.teamId)).filter((name) =>
    name.startsWith(id),
  );
const check = (clipId: string) => checkClip({ teamId: phone.team.teamId, clipId }, new Date());

async function sendWhole(bytes: Uint8Array, more: Record<string, string> = {}): Promise<string> {
  const id = newId();
  const up = uploader(cookie);
  expect((await up.begin(about(id, more), bytes.length)).status).toBe(201);
  expect((await up.send(id, 0, bytes)).status).toBe(204);
  return id;
}

/** As if it had been decoded, which takes seconds. */
async function readyFilm(): Promise<string> {
  const id = newId();
  const key = clipKey(phone.team.teamId, id);
  await ownerQuery(
    `insert into clip (team_id, id, client_id, rung_id, side, filmed_on, storage_key, bytes, state, received_at)
     values ($1, $2, $3, $4, 'both', '2026-05-01', $5, 4, 'ready', now())`,
    [phone.team.teamId, id, phone.clientId, rungId, key],
  );
  await fileStore().write(key, Buffer.from('film'));
  return id;
}

it('comes in pieces, cut and resumed by a client of the protocol that is not ours, and is played in ranges', async () => {
  const long = Buffer.concat([film, Buffer.alloc(3 * PIECE_BYTES)]); // bytes behind the film do no harm
  const id = newId();
  const offsets: number[] = [];
  const once = () =>
    new Promise<string>((done, fail) => {
      const upload = new Upload(long, {
        endpoint: `${server.address}/api/clips`,
        ...(offsets.length > 0 && { uploadUrl: `${server.address}/api/clips/${id}` }),
        headers: { cookie },
        metadata: about(id),
        chunkSize: 700_000,
        retryDelays: [],
        onProgress: (sent) => {
          if (offsets.length === 0 && sent > 1_500_000) {
            offsets.push(sent);
            void upload.abort().then(() => done('cut'));
          }
        },
        onChunkComplete: (_, accepted) => void (offsets.length > 0 && offsets.push(accepted)),
        onSuccess: () => done('whole'),
        onError: fail,
      });
      upload.start();
    });
  expect(await once()).toBe('cut');
  const stands = Number((await uploader(cookie).where(id)).headers.get('upload-offset'));
  expect(stands).toBeGreaterThan(0);
  expect(stands).toBeLessThan(long.length);
  offsets.length = 1;
  expect(await once()).toBe('whole');
  expect(offsets[1]).toBeGreaterThan(stands); // nothing that was there came again
  expect(await rowOf(id)).toMatchObject({ state: 'checking', bytes: long.length, side: 'both' });
  await check(id);
  const row = await rowOf(id);
  expect(row).toMatchObject({ state: 'ready', width: 160, height: 120, codec: 'h264', seconds: 2 });
  expect(filesOf(id)).toEqual([`${id}.mp4`]);

  const play = (who: string | undefined, headers: Record<string, string> = {}) =>
    playClip(browserRequest(`/api/clips/${id}/film`, { ...(who && { cookie: who }), headers }), {
      params: Promise.resolve({ clipId: id }),
    });
  const whole = await play(cookie);
  expect([whole.status, whole.headers.get('content-type')]).toEqual([200, 'video/mp4']);
  const bytes = Buffer.from(await whole.arrayBuffer());
  expect(bytes.length).toBe(row?.bytes);
  expect(bytes.includes('+38.7223')).toBe(false);
  const etag = whole.headers.get('etag') ?? '';
  const part = await play(cookie, { range: 'bytes=100-199', 'if-range': etag });
  expect([part.status, part.headers.get('content-range')]).toEqual([206, `bytes 100-199/${bytes.length}`]);
  expect(Buffer.from(await part.arrayBuffer()).equals(bytes.subarray(100, 200))).toBe(true);
  expect((await play(cookie, { range: 'bytes=100-199', 'if-range': '"other"' })).status).toBe(200);
  expect((await play(cookie, { range: `bytes=${bytes.length}-` })).status).toBe(416);
  expect(part.headers.get('cache-control')).toBe('private, no-store');

  const mate = await anotherPhone(phone.team, 'Mate');
  const other = await makeTestTeam('Other team');
  for (const who of [undefined, await cookieFor(mate.actor.userId), await cookieFor(other.userId)])
    expect([401, 404]).toContain((await play(who)).status);
  expect((await play(await cookieFor(phone.team.userId))).status).toBe(200);
}, 60_000);

it('keeps what came before the line was cut within a request', async () => {
  const id = newId();
  await uploader(cookie).begin(about(id), 2_000_000);
  const { port } = new URL(server.address);
  await new Promise<void>((done) => {
    const socket = connect(Number(port), '127.0.0.1', () => {
      const head = `PATCH /api/clips/${id} HTTP/1.1\r\nhost: localhost:3000\r\ncookie: ${cookie}\r\ntus-resumable: 1.0.0\r\nupload-offset: 0\r\ncontent-type: application/offset+octet-stream\r\ncontent-length: 2000000\r\n\r\n`;
      socket.write(head);
      socket.write(Buffer.alloc(1_300_000), () => setTimeout(() => socket.resetAndDestroy(), 300));
    });
    socket.on('close', () => done());
  });
  await expect
    .poll(async () => (await uploader(cookie).where(id)).headers.get('upload-offset'), { timeout: 5000 })
    .toBe('1300000');
  expect((await uploader(cookie).send(id, 1_300_000, Buffer.alloc(700_000))).status).toBe(204);
  expect(await rowOf(id)).toMatchObject({ state: 'checking' });
});

it('is nobody else’s: another client and another team find nothing there', async () => {
  const id = newId();
  await uploader(cookie).begin(about(id), 100);
  const mate = await anotherPhone(phone.team, 'Another mate');
  const theirs = uploader(await cookieFor(mate.actor.userId));
  for (const answer of [
    await theirs.where(id),
    await theirs.send(id, 0, Buffer.alloc(100)),
    await theirs.drop(id),
  ])
    expect(answer.status).toBe(404);
  expect((await theirs.begin(about(id), 100)).status).toBe(409);
  expect((await uploader(cookie).drop(id)).status).toBe(204);
  expect((await uploader(cookie).where(id)).status).toBe(404);
});

it('two at once: one goes on, the other is told to wait; a wrong offset is told where it stands', async () => {
  const id = newId();
  const up = uploader(cookie);
  await up.begin(about(id), 200);
  let open: ReadableStreamDefaultController<Uint8Array> | undefined;
  const slow = new ReadableStream<Uint8Array>({
    start: (controller) => {
      open = controller;
    },
  });
  const first = up.send(id, 0, slow);
  open?.enqueue(Buffer.alloc(50));
  await expect.poll(async () => (await rowOf(id))?.writing_until).toBeTruthy();
  expect((await up.send(id, 0, Buffer.alloc(200))).status).toBe(423);
  open?.close();
  expect((await first).status).toBe(204);
  const wrong = await up.send(id, 0, Buffer.alloc(200));
  expect([wrong.status, wrong.headers.get('upload-offset')]).toEqual([409, '50']);
  const both = await Promise.all([up.send(id, 50, Buffer.alloc(150)), up.send(id, 50, Buffer.alloc(150))]);
  expect(both.map(({ status }) => status).sort()).toEqual([204, expect.toBeOneOf([409, 423, 204])]);
  expect(await rowOf(id)).toMatchObject({ state: 'checking', upload_offset: 200 });
});

it('a writer whose line was silent too long writes nothing over what came after it; what is given up leaves nothing', async () => {
  const up = uploader(cookie);
  const slowly = async (id: string) => {
    await up.begin(about(id), 200);
    const { readable, writable } = new TransformStream<Uint8Array, Uint8Array>();
    const writer = writable.getWriter();
    const answer = up.send(id, 0, readable);
    void writer.write(Buffer.alloc(50, 1));
    await expect.poll(async () => (await rowOf(id))?.writing_until).toBeTruthy();
    return { answer, end: () => writer.close() };
  };
  const id = newId();
  const silent = await slowly(id);
  const clock = join(mkdtempSync(join(tmpdir(), 'plumbline-test-')), 'clock');
  writeFileSync(clock, new Date(Date.now() + 40_000).toISOString());
  process.env.PLUMBLINE_CLOCK_FILE = clock;
  try {
    expect((await up.send(id, 0, Buffer.alloc(200, 2))).status).toBe(204);
    await silent.end();
    expect((await silent.answer).status).toBe(409);
  } finally {
    delete process.env.PLUMBLINE_CLOCK_FILE;
  }
  const piece = await fileStore().read(`${phone.team.teamId}/${id}.0.part`);
  expect(Buffer.from(piece ?? []).equals(Buffer.alloc(200, 2))).toBe(true);

  const other = newId();
  const dropped = await slowly(other);
  expect((await up.drop(other)).status).toBe(204);
  await dropped.end();
  expect((await dropped.answer).status).toBe(409);
  expect(filesOf(other)).toEqual([]);
});

it('leaves nothing of a film whose client is deleted while it is decoded, and nothing that a killed worker left', async () => {
  const id = await sendWhole(film);
  const going = check(id);
  await new Promise((done) => setTimeout(done, 300));
  await ownerQuery('delete from clip where id = $1', [id]);
  await going;
  expect(filesOf(id)).toEqual([]);
  const [old, young] = [
    mkdtempSync(join(tmpdir(), 'plumbline-clip-')),
    mkdtempSync(join(tmpdir(), 'plumbline-clip-')),
  ];
  const before = new Date(Date.now() - 2 * 3_600_000);
  utimesSync(old, before, before);
  await sweepClips(new Date());
  expect([existsSync(old), existsSync(young)]).toEqual([false, true]);
  rmSync(young, { recursive: true });
}, 60_000);

it('the same begun again is the same; what is too large, unnamed or one too many is refused with the field', async () => {
  const up = uploader(cookie);
  await ownerQuery(`delete from clip where state = 'arriving'`);
  const ids = [newId(), newId(), newId()];
  for (const id of ids) expect((await up.begin(about(id), 100)).status).toBe(201);
  expect((await up.begin(about(ids[0] ?? ''), 100)).status).toBe(201);
  expect((await up.begin(about(newId()), 100)).status).toBe(409);
  for (const id of ids) await up.drop(id);
  for (const [what, length] of [
    [about(newId()), 80 * 1024 * 1024 + 1],
    [about(newId()), 0],
    [about(newId(), { rungId: newId() }), 100],
    [about(newId(), { side: 'middle' }), 100],
    [about('no-id'), 100],
    [about(newId(), { type: 'image/jpeg' }), 100],
  ] as const)
    expect((await up.begin(what, length)).status).toBe(400);
  const id = newId();
  await up.begin(about(id), 10);
  expect((await up.send(id, 0, Buffer.alloc(11))).status).toBe(413);
  expect((await up.send(id, 0, Buffer.alloc(10), { 'content-type': 'video/mp4' })).status).toBe(415);
  expect((await up.send(id, 0, Buffer.alloc(10), { 'tus-resumable': '0.2' })).status).toBe(412);
  await up.drop(id);
});

it('refuses with words what is no clip or is cut, keeps nothing of it, and the client can send again', async () => {
  const text = await sendWhole(Buffer.from('no film at all '.repeat(50)));
  const cut = await sendWhole(film.subarray(0, film.length / 2));
  for (const id of [text, cut]) {
    await check(id);
    await check(id); // twice is once
    expect(filesOf(id)).toEqual([]);
  }
  expect(await rowOf(text)).toMatchObject({
    state: 'refused',
    refused_why: expect.stringMatching(/^This is no clip/),
  });
  expect(await rowOf(cut)).toMatchObject({
    state: 'refused',
    refused_why: expect.stringMatching(/^It is cut off/),
  });
  expect((await uploader(cookie).drop(text)).status).toBe(204);
  const waiting = await ownerQuery(
    `select from outbox where kind = 'check-clip' and sent_at is null and dedupe_key = any($1)`,
    [[text, cut]],
  );
  expect(waiting).toEqual([]);
}, 60_000);

it('what stands still for a day is let go with a line; what was looked at is kept for the team’s days, or pinned', async () => {
  const id = newId();
  const up = uploader(cookie);
  await up.begin(about(id), 2000);
  await up.send(id, 0, Buffer.alloc(1000));
  const hours = (count: number) => new Date(Date.now() + count * 3_600_000);
  await sweepClips(hours(23));
  expect(await rowOf(id)).toBeDefined();
  await sweepClips(hours(25));
  expect([await rowOf(id), filesOf(id)]).toEqual([undefined, []]);
  const [kept, pinned] = [await readyFilm(), await readyFilm()];
  await ownerQuery(`update clip set looked_at = now() - interval '170 days' where id = any($1)`, [
    [kept, pinned],
  ]);
  await ownerQuery('update clip set pinned_at = now() where id = $1', [pinned]);
  await sweepClips(new Date());
  const told = await rowOf(kept);
  expect(new Date(String(told?.keep_until)).getTime()).toBeGreaterThan(hours(29 * 24).getTime()); // said 30 days before
  await sweepClips(hours(29 * 24));
  expect((await rowOf(kept))?.state).toBe('ready');
  await sweepClips(hours(32 * 24));
  expect([(await rowOf(kept))?.state, filesOf(kept)]).toEqual(['gone', []]);
  expect([(await rowOf(pinned))?.state, filesOf(pinned)]).toEqual(['ready', [`${pinned}.mp4`]]);
  const lines = await ownerQuery(
    `select action from audit where object_id = any($1) and action like '%let-go' order by 1`,
    [[id, kept]],
  );
  expect(lines.map((line) => (line as { action: string }).action)).toEqual(['clip-let-go', 'upload-let-go']);
}, 60_000);

it('is refused where a piece of it is gone, and can be sent again', async () => {
  const id = await sendWhole(film);
  rmSync(join(process.env.PLUMBLINE_FILES ?? '', phone.team.teamId, `${id}.0.part`));
  await check(id);
  expect(await rowOf(id)).toMatchObject({
    state: 'refused',
    refused_why: 'It did not arrive whole. Choose it again and send it once more.',
  });
});

it('is handed on by the tick where the queue lost it', async () => {
  const id = await sendWhole(film);
  await ownerQuery(`update outbox set created_at = now() - interval '1 hour' where dedupe_key = $1`, [id]);
  expect(await handOnClips()).toBeGreaterThan(0);
}, 30_000);
