import { CLIP_BOUNDS, megabytes } from '#lib/domain/clip-bounds.ts';

/** Why a file cannot be sent, before a byte of it is; null: it can, or only the server can tell. */
export async function whyNot(file: File): Promise<string | null> {
  if (file.size === 0) return 'This file is empty. Choose it again.';
  if (file.type !== '' && !file.type.startsWith('video/'))
    return 'This is no film. Choose a film, or record one.';
  if (file.size > CLIP_BOUNDS.bytes)
    return `This film is ${megabytes(file.size)}. At most ${megabytes(CLIP_BOUNDS.bytes)} can be sent: film in HD (1080p), or cut it shorter.`;
  const seconds = await lengthOf(file);
  if (seconds !== undefined && seconds > CLIP_BOUNDS.seconds + CLIP_BOUNDS.graceSeconds)
    return `This film is ${Math.round(seconds)} s long. At most ${CLIP_BOUNDS.seconds} s can be sent: cut it on your phone, or film one set again.`;
  return null;
}

/** How long this browser says the film is; undefined: it cannot read it, and the server decides. */
function lengthOf(file: File): Promise<number | undefined> {
  const address = URL.createObjectURL(file);
  const video = document.createElement('video');
  return new Promise<number | undefined>((done) => {
    const timer = setTimeout(() => done(undefined), 5_000);
    const end = (seconds: number | undefined) => {
      clearTimeout(timer);
      done(seconds);
    };
    video.preload = 'metadata';
    video.onloadedmetadata = () => end(Number.isFinite(video.duration) ? video.duration : undefined);
    video.onerror = () => end(undefined);
    video.src = address;
  }).finally(() => URL.revokeObjectURL(address));
}
