import sharp from 'sharp';
import { AppError } from '#lib/errors.ts';

/** What a sent picture may be and what is kept of it; our own choices. */
export const STILL_BOUNDS = {
  /** Sent, on either side: a 50-megapixel photo is 8,160 x 6,120. */
  inSide: 12_000,
  inPixels: 64_000_000,
  /** Kept, the longer side. */
  outSide: 1600,
  outBytes: 1024 * 1024,
  seconds: 15,
} as const;

export type StillPicture = { jpeg: Uint8Array; width: number; height: number };

// Of libvips' many readers only these three can be reached, whatever a file pretends to be.
sharp.block({ operation: ['VipsForeignLoad'] });
sharp.unblock({
  operation: ['VipsForeignLoadJpegBuffer', 'VipsForeignLoadPngBuffer', 'VipsForeignLoadWebpBuffer'],
});
sharp.cache(false);
sharp.concurrency(1);

/** Qualities and sizes tried in turn until the picture fits. */
const TRIES = [
  [STILL_BOUNDS.outSide, 80],
  [STILL_BOUNDS.outSide, 60],
  [1280, 60],
  [1024, 50],
  [800, 40],
] as const;

/**
 * A picture as it is kept: decoded and written anew as JPEG, upright, bounded, without a place, a camera or any
 * other data about it. Refuses what is no JPEG, PNG or WebP, moves, or is too large to be decoded safely.
 */
export async function stillPicture(bytes: Uint8Array): Promise<StillPicture> {
  await assertStill(bytes);
  for (const [side, quality] of TRIES) {
    const { data, info } = await reencode(bytes, side, quality);
    if (data.byteLength <= STILL_BOUNDS.outBytes)
      return { jpeg: data, width: info.width, height: info.height };
  }
  throw refused('cannot be made small enough to keep: send a smaller one');
}

async function assertStill(bytes: Uint8Array): Promise<void> {
  if (bytes.byteLength === 0) throw refused('is empty (0 bytes): choose it again');
  if (isHeif(bytes)) throw refused('is HEIC or AVIF, which cannot be read here: send it as JPEG');
  if (!isKnown(bytes)) throw refused('is not a JPEG, PNG or WebP file, whatever its name says');
  const { width, height, pages } = await sharp(bytes, { limitInputPixels: false })
    .metadata()
    .catch(() => {
      throw refused(BROKEN);
    });
  if ((pages ?? 1) > 1) throw refused('moves (it holds several pictures): send a still one');
  const { inSide, inPixels } = STILL_BOUNDS;
  if (width > inSide || height > inSide || width * height > inPixels)
    throw refused(
      `is ${width} x ${height} px: at most ${inSide} px on a side and ${inPixels / 1_000_000} megapixels`,
    );
}

const BROKEN = 'is damaged or not whole: choose it again';

async function reencode(bytes: Uint8Array, side: number, quality: number) {
  try {
    return await sharp(bytes, { limitInputPixels: STILL_BOUNDS.inPixels, failOn: 'error' })
      .timeout({ seconds: STILL_BOUNDS.seconds })
      .autoOrient()
      .resize({ width: side, height: side, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .toColourspace('srgb')
      .jpeg({ quality })
      .toBuffer({ resolveWithObject: true });
  } catch (cause) {
    throw refused(BROKEN, cause);
  }
}

function refused(why: string, cause?: unknown): AppError {
  return new AppError('invalid', `This picture ${why}. Nothing of it was kept.`, {
    fields: { still: why },
    cause,
  });
}

const startsWith = (bytes: Uint8Array, text: string, at = 0) => latin(bytes, at, at + text.length) === text;

function isKnown(bytes: Uint8Array): boolean {
  return (
    startsWith(bytes, '\xff\xd8\xff') ||
    startsWith(bytes, '\x89PNG\r\n\x1a\n') ||
    (startsWith(bytes, 'RIFF') && startsWith(bytes, 'WEBP', 8))
  );
}

function isHeif(bytes: Uint8Array): boolean {
  return startsWith(bytes, 'ftyp', 4) && /^(hei|hev|mif|msf|avi)/.test(latin(bytes, 8, 11));
}

function latin(bytes: Uint8Array, from: number, to: number): string {
  return Buffer.from(bytes.slice(from, to)).toString('latin1');
}
