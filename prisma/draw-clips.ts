// Draws the demo's films and writes them to prisma/demo/clips: node --import tsx prisma/draw-clips.ts
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { runFfmpeg } from '#lib/files/video/run-ffmpeg.ts';

const SIZE = { width: 360, height: 480 };
const FPS = 15;
const SECONDS = 6;
const FLOOR = 430;

type Point = readonly [number, number];
type Drawn = { lines: Point[][]; head: Point };
const FILMS: Record<string, (t: number) => Drawn> = {
  'handstand-side': (t) => handstand(lean(t, 0.05), 0.06 * Math.sin(t * 1.7)),
  'handstand-hips': (t) => handstand(lean(t, 0.04), 0.1 + 0.22 * Math.max(0, Math.sin((t - 1) * 0.8))),
  'handstand-behind': behind,
  'lean-side': planche,
};

/** Sways about the hand and steps up to it in the first second. */
function lean(t: number, width: number): number {
  return width * Math.sin(t * 2.3) + (t < 1 ? (1 - t) * 0.35 : 0);
}

/** From the side: hand, shoulder, hip, toes; `arch` bends at the hip. */
function handstand(tilt: number, arch: number): Drawn {
  const hand: Point = [180, FLOOR - 4];
  const shoulder = from(hand, tilt, 118);
  const hip = from(shoulder, tilt * 0.6 - arch * 0.4, 104);
  const toes = from(hip, tilt * 0.4 + arch, 172);
  return { lines: [[hand, shoulder, hip, toes]], head: from(hand, tilt + 0.16, 88) };
}

/** From behind: hips turn slowly to one side. */
function behind(t: number): Drawn {
  const turn = 0.18 * Math.max(0, Math.sin((t - 0.5) * 0.7));
  const hands: Point[] = [
    [146, FLOOR - 4],
    [214, FLOOR - 4],
  ];
  const shoulders: Point[] = [
    [150, 312],
    [210, 312],
  ];
  const middle: Point = [180 + turn * 40, 208];
  const hips: Point[] = [
    [middle[0] - 20, middle[1] - turn * 34],
    [middle[0] + 20, middle[1] + turn * 34],
  ];
  const legs = hips.map((hip, at) => [hip, from(hip, turn * (at === 0 ? 0.4 : 0.9), 168)]);
  const arms = hands.map((hand, at) => [hand, shoulders[at] ?? hand]);
  return {
    lines: [
      ...arms,
      shoulders,
      [shoulders[0] ?? middle, hips[0] ?? middle],
      [shoulders[1] ?? middle, hips[1] ?? middle],
      hips,
      ...legs,
    ],
    head: [180, 344],
  };
}

/** A planche lean from the side: shoulders go in front of the hands and come back. */
function planche(t: number): Drawn {
  const hand: Point = [200, FLOOR - 4];
  const forward = 20 + 26 * (0.5 - 0.5 * Math.cos((t * Math.PI) / 3));
  const shoulder: Point = [200 - forward, FLOOR - 112];
  const hip: Point = [shoulder[0] + 100, FLOOR - 96];
  const toes: Point = [hip[0] + 76, FLOOR - 6];
  return { lines: [[hand, shoulder, hip, toes]], head: [shoulder[0] - 34, shoulder[1] - 6] };
}

function from([x, y]: Point, angle: number, length: number): Point {
  return [x + Math.sin(angle) * length, y - Math.cos(angle) * length];
}

function frame({ lines, head }: Drawn): string {
  const limbs = lines
    .map(
      (points) =>
        `<polyline points="${points.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ')}"/>`,
    )
    .join('');
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${SIZE.width}" height="${SIZE.height}">
<rect width="360" height="480" fill="#d9ddd4"/><rect y="${FLOOR}" width="360" height="50" fill="#9aa097"/>
<rect x="306" y="60" width="10" height="${FLOOR - 60}" fill="#7f8a82"/><rect x="40" y="420" width="280" height="12" fill="#5a655e"/>
<g fill="none" stroke="#161d1a" stroke-width="17" stroke-linecap="round" stroke-linejoin="round">${limbs}</g>
<circle cx="${head[0].toFixed(1)}" cy="${head[1].toFixed(1)}" r="19" fill="#161d1a"/></svg>`;
}

const folder = mkdtempSync(join(tmpdir(), 'plumbline-draw-'));
try {
  for (const [name, draw] of Object.entries(FILMS)) {
    const frames: Buffer[] = [];
    for (let at = 0; at < SECONDS * FPS; at += 1)
      frames.push(
        await sharp(Buffer.from(frame(draw(at / FPS))))
          .jpeg({ quality: 90 })
          .toBuffer(),
      );
    const input = join(folder, 'frames');
    writeFileSync(input, Buffer.concat(frames));
    const read = [
      '-hide_banner',
      '-loglevel',
      'error',
      '-f',
      'mjpeg',
      '-framerate',
      String(FPS),
      '-i',
      '/in/film',
    ];
    const code = [
      '-c:v',
      'libx264',
      '-preset',
      'medium',
      '-crf',
      '27',
      '-pix_fmt',
      'yuv420p',
      '-threads',
      '1',
    ];
    const write = [
      '-map_metadata',
      '-1',
      '-fflags',
      '+bitexact',
      '-flags:v',
      '+bitexact',
      '-movflags',
      '+faststart',
      '-f',
      'mp4',
      '/out',
    ];
    const output = join('prisma/demo/clips', `${name}.mp4`);
    const answer = await runFfmpeg({
      program: 'film',
      args: [...read, ...code, ...write],
      input,
      output,
      timeoutMs: 120_000,
    });
    process.stdout.write(`${output}: ${answer?.bytes ?? 'not drawn'} bytes\n`);
  }
} finally {
  rmSync(folder, { recursive: true });
}
