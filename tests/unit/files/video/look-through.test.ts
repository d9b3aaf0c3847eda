import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lookThrough, type Verdict } from '#lib/files/video/look-through.ts';
import { runFfmpeg } from '#lib/files/video/run-ffmpeg.ts';
import { aFilm, aProResFilm, onlySound } from '#tests/fixtures/films.ts';
import { aPhoto } from '#tests/fixtures/pictures.ts';

const folder = mkdtempSync(join(tmpdir(), 'plumbline-look-'));
afterAll(() => rmSync(folder, { recursive: true }));
const paths = { input: join(folder, 'in'), output: join(folder, 'out') };

async function look(bytes: Uint8Array | string, sound = false): Promise<Verdict> {
  rmSync(paths.output, { force: true });
  writeFileSync(paths.input, bytes);
  return lookThrough(paths, { sound });
}

let film: Buffer;
let inFront: Buffer;
beforeAll(async () => {
  film = await aFilm({ sound: true });
  inFront = await aFilm({ front: true, seconds: 4 });
}, 60_000);

describe('what is kept of a clip', { timeout: 60_000 }, () => {
  it('is a new file without its place and without its sound, its pictures as they were', async () => {
    expect(film.includes('+38.7223')).toBe(true);
    const verdict = await look(film);
    expect(verdict).toMatchObject({
      taken: true,
      film: { width: 160, height: 120, fps: 15, codec: 'h264', seconds: 2 },
    });
    const kept = readFileSync(paths.output);
    for (const told of ['+38.7223', 'At home', 'mp4a', 'Lavf']) expect(kept.includes(told)).toBe(false);
    expect(kept.indexOf('moov')).toBeLessThan(kept.indexOf('mdat'));
    const again = await look(film, true);
    expect(again.taken).toBe(true);
    expect(readFileSync(paths.output).includes('mp4a')).toBe(true);
  });

  it('is H.264 where the phone sent what browsers do not play', async () => {
    expect(await look(await aProResFilm())).toMatchObject({
      taken: true,
      film: { codec: 'h264', width: 320, height: 240 },
    });
  });
});

describe('what is refused, with words', { timeout: 60_000 }, () => {
  const why = async (bytes: Uint8Array | string) => {
    const verdict = await look(bytes);
    return verdict.taken ? 'taken' : verdict.why;
  };

  it('what is no clip, whatever it is named', async () => {
    expect(await why('This is a text.'.repeat(500))).toMatch(/^This is no clip/);
    expect(await why(await aPhoto())).toMatch(/^This is no clip/);
    expect(await why('#EXTM3U\n#EXTINF:10,\nfile:///etc/passwd\n')).toMatch(/^This is no clip/);
    expect(await why('')).toMatch(/^This is no clip/);
  });

  it('what is too long, by what it says and by its pictures', async () => {
    const long = await aFilm({ seconds: 33, rate: 5, size: '64x48', front: true });
    expect(await why(long)).toBe(
      'It is 33 s long, at most 30 s are taken. Cut it on your phone, or film one set again.',
    );
    expect(await why(await aFilm({ seconds: 30.8, rate: 5, size: '64x48' }))).toBe('taken');
  });

  it('what is cut off in the middle, wherever its list of pictures stands', async () => {
    expect(await why(film.subarray(0, film.length / 2))).toMatch(/^It is cut off: its end is missing/);
    expect(await why(inFront.subarray(0, Math.floor(inFront.length * 0.6)))).toMatch(
      /^It is cut off: its pictures end after [12]\.\d s of 4\.0 s/,
    );
  });

  it('what has too many pixels, only sound, or one picture', async () => {
    expect(await why(await aFilm({ size: '5000x64', seconds: 0.5, rate: 4 }))).toMatch(/^It is 5000 x 64 px/);
    expect(await why(await onlySound())).toMatch(/^There is no picture in it/);
    expect(await why(await aFilm({ seconds: 0.2, rate: 5 }))).toMatch(/^There is only one picture/);
  });
});

it('ends what takes too long, and gives it no more memory than allowed', { timeout: 60_000 }, async () => {
  const started = Date.now();
  const endless = ['-f', 'lavfi', '-i', 'testsrc2=s=640x480:r=30', '-f', 'null', '-'];
  expect(await runFfmpeg({ program: 'film', args: endless, timeoutMs: 1500 })).toBeUndefined();
  expect(Date.now() - started).toBeLessThan(10_000);
  const huge = ['-loglevel', 'error', '-f', 'lavfi', '-i', 'testsrc2=s=16000x16000:r=1:d=5'];
  const answer = await runFfmpeg({
    program: 'film',
    args: [...huge, '-vf', 'loop=20:20', '-f', 'null', '-'],
    timeoutMs: 30_000,
  });
  expect(answer === undefined || /memory|-12/i.test(answer.log)).toBe(true);
});
