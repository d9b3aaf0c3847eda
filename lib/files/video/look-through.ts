import { stat } from 'node:fs/promises';
import { type CheckedFilm, CLIP_BOUNDS } from '#lib/domain/clip-bounds.ts';
import { type PictureStream, type Probed, readProbe } from './read-probe.ts';
import { runFfmpeg } from './run-ffmpeg.ts';

/** Kept as a new file, or refused with words for who filmed. */
export type Verdict = { taken: true; film: CheckedFilm } | { taken: false; why: string };

type Paths = { input: string; output: string };

const LOOK_MS = 30_000;
const DECODE_MS = 240_000;
const WRITE_MS = 360_000;
/** Containers that phones and cameras write. Everything else that ffmpeg could open (lists, pictures, decks) stays shut. */
const CONTAINERS = ['mov', 'mp4', 'matroska', 'webm', 'avi', 'mpegts', 'mpeg'];
/** Plays in every browser as it is. */
const PLAYS = { codec: 'h264', pixels: ['yuv420p', 'yuvj420p'] };
/** What one is converted to: long enough a side to see a wrist. */
const CONVERTED_SIDE = 1280;
const QUIET = ['-hide_banner', '-nostats', '-loglevel', 'error'];
const IN = ['-protocol_whitelist', 'file', '-i', '/in/film'];

/**
 * Decodes a clip from its first picture to its last and writes it anew: without place, device or any other data about it,
 * without sound unless it is wanted, its list of pictures in front. What cannot play everywhere is converted to H.264.
 */
export async function lookThrough({ input, output }: Paths, wish: { sound: boolean }): Promise<Verdict> {
  const probed = await probe(input);
  if (probed === 'cut') return no(CUT);
  const refused = refusalOf(probed);
  if (refused || !probed?.picture) return no(refused ?? NO_CLIP);
  const decoded = await decode(input, probed.picture);
  if (!decoded)
    return no(
      'It could not be looked through: it is damaged, or too heavy. Film it in HD (1080p) and send it again.',
    );
  const cut = cutOff(probed, decoded);
  if (cut) return no(cut);
  const keepSound = wish.sound && probed.hasSound;
  if (!(await write({ input, output }, { picture: probed.picture, keepSound })))
    return no('It cannot be made ready to play. Film it as MP4 (H.264) and send it again.');
  const written = await probe(output);
  if (written === 'cut' || !written?.picture)
    return no('It cannot be made ready to play. Film it as MP4 (H.264) and send it again.');
  const { width, height, fps, codec } = written.picture;
  return {
    taken: true,
    film: {
      width,
      height,
      fps,
      codec,
      seconds: Math.round(decoded.seconds * 100) / 100,
      bytes: written.bytes,
    },
  };
}

const no = (why: string): Verdict => ({ taken: false, why });

const NO_CLIP =
  'This is no clip: nothing in it can be read as a film, whatever its name says. Choose another file.';

/** What is in a file; `cut`: a film whose end, where the list of its pictures stands, is missing. */
async function probe(path: string): Promise<(Probed & { bytes: number }) | 'cut' | undefined> {
  const args = ['-v', 'error', '-of', 'json', '-show_format', '-show_streams', ...IN];
  const answer = await runFfmpeg({ program: 'probe', args, input: path, timeoutMs: LOOK_MS });
  const probed = answer && readProbe(answer.out);
  if (!probed) return answer?.log.includes(NO_END) ? 'cut' : undefined;
  return { ...probed, bytes: (await stat(path)).size };
}

/** Why a file is not taken before it is decoded. */
function refusalOf(probed: Probed | undefined): string | undefined {
  if (!probed?.format.split(',').some((name) => CONTAINERS.includes(name))) return NO_CLIP;
  const { picture, seconds } = probed;
  if (!picture) return 'There is no picture in it, only sound. Film again and send the film.';
  const [long, short] = [Math.max(picture.width, picture.height), Math.min(picture.width, picture.height)];
  if (long > CLIP_BOUNDS.longSide || short > CLIP_BOUNDS.shortSide)
    return `It is ${picture.width} x ${picture.height} px, at most ${CLIP_BOUNDS.longSide} x ${CLIP_BOUNDS.shortSide} can be looked at. Film in HD (1080p) and send it again.`;
  return seconds !== undefined && isTooLong(seconds) ? tooLong(seconds) : undefined;
}

const isTooLong = (seconds: number) => seconds > CLIP_BOUNDS.seconds + CLIP_BOUNDS.graceSeconds;
const tooLong = (seconds: number) =>
  `It is ${Math.round(seconds)} s long, at most ${CLIP_BOUNDS.seconds} s are taken. Cut it on your phone, or film one set again.`;

type Decoded = { seconds: number; frames: number; broke: boolean };

const NO_END = 'moov atom not found';
const CUT = 'It is cut off: its end is missing. Send it again from the start, or film again.';

/** Every picture up to a little over the bound, and where it ended. */
async function decode(input: string, picture: PictureStream): Promise<Decoded | undefined> {
  const args = [
    ...QUIET,
    '-progress',
    'pipe:1',
    ...IN,
    '-map',
    `0:${picture.index}`,
    '-an',
    '-sn',
    '-dn',
    '-t',
    String(CLIP_BOUNDS.seconds + CLIP_BOUNDS.graceSeconds + 2),
    '-vsync',
    'passthrough',
    '-f',
    'null',
    '-',
  ];
  const answer = await runFfmpeg({ program: 'film', args, input, timeoutMs: DECODE_MS });
  if (!answer) return undefined;
  const last = (name: string) =>
    Number([...answer.out.matchAll(new RegExp(`^${name}=(-?\\d+)`, 'gm'))].at(-1)?.[1] ?? 0);
  const frames = last('frame');
  if (frames === 0) return undefined;
  return {
    frames,
    seconds: last('out_time_us') / 1_000_000,
    broke: /partial file|truncat|end of file|moov atom not found/i.test(answer.log),
  };
}

/** Whether the pictures end where the file says they do. */
function cutOff(probed: Probed, { seconds, frames, broke }: Decoded): string | undefined {
  if (frames < 2) return 'There is only one picture in it. Film again and send the film.';
  if (isTooLong(seconds)) return tooLong(seconds);
  const said = probed.seconds ?? seconds;
  const ends = seconds < said - Math.max(0.5, said * 0.1);
  if (!broke && !ends) return undefined;
  return `It is cut off: its pictures end after ${seconds.toFixed(1)} s of ${said.toFixed(1)} s. Send it again from the start, or film again.`;
}

type Wanted = { picture: PictureStream; keepSound: boolean };

async function write({ input, output }: Paths, { picture, keepSound }: Wanted): Promise<boolean> {
  const asIs = picture.codec === PLAYS.codec && PLAYS.pixels.includes(picture.pixels);
  const args = [
    ...QUIET,
    ...IN,
    '-map',
    `0:${picture.index}`,
    ...(keepSound ? ['-map', '0:a:0'] : ['-an']),
    '-sn',
    '-dn',
    '-map_metadata',
    '-1',
    '-map_metadata:s',
    '-1',
    '-map_chapters',
    '-1',
    '-fflags',
    '+bitexact',
    '-flags:v',
    '+bitexact',
    ...(asIs ? ['-c:v', 'copy'] : CONVERT),
    ...(keepSound ? ['-c:a', 'aac', '-b:a', '96k', '-ac', '1'] : []),
    '-fs',
    String(CLIP_BOUNDS.bytes),
    '-movflags',
    '+faststart',
    '-f',
    'mp4',
    '/out',
  ];
  const answer = await runFfmpeg({ program: 'film', args, input, output, timeoutMs: WRITE_MS });
  return answer?.ended === 0 && answer.bytes > 0;
}

const CONVERT = [
  '-vf',
  `scale='min(${CONVERTED_SIDE},iw)':'min(${CONVERTED_SIDE},ih)':force_original_aspect_ratio=decrease:force_divisible_by=2`,
  '-c:v',
  'libx264',
  '-preset',
  'veryfast',
  '-crf',
  '23',
  '-pix_fmt',
  'yuv420p',
  '-threads',
  '1',
  '-fpsmax',
  '60',
];
