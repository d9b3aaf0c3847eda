import { z } from 'zod';
import { CLIP_BOUNDS } from '#lib/domain/clip-bounds.ts';
import { SIDES } from '#lib/domain/vocabulary.ts';

export const clipAddress = z.object({ clipId: z.uuid() });
export const filmRequestAddress = z.object({ requestId: z.uuid() });

/** What the phone says of a clip before it sends it: the metadata of a tus upload. */
export const clipAbout = z.object({
  /** Made by the phone, so that a repeat begins nothing twice. */
  id: z.uuid('must be an id'),
  requestId: z.uuid('must be an id').nullable().default(null),
  rungId: z.uuid('must be an id of a rung'),
  side: z.enum(SIDES, `must be one of ${SIDES.join(', ')}`),
  filmedOn: z.iso.date('must be a date').nullable().default(null),
  /** Kept without its sound unless the client ticked it. */
  sound: z.enum(['yes', 'no']).default('no'),
  type: z
    .string()
    .regex(/^video\/[a-z0-9.+-]{1,40}$/i, 'must be a film (video/…)')
    .nullable()
    .default(null),
});
export type ClipAbout = z.output<typeof clipAbout>;

const whole = (name: string) =>
  z
    .string({ error: `${name} is missing: it must be a whole number` })
    .regex(/^\d{1,12}$/, `${name} must be a whole number`)
    .transform(Number);

export const uploadLength = whole('upload-length').pipe(
  z
    .number()
    .min(1, 'The file is empty (0 bytes): choose it again.')
    .max(
      CLIP_BOUNDS.bytes,
      `The clip is too large: at most ${CLIP_BOUNDS.bytes / (1024 * 1024)} MB. Film in HD (1080p), or cut it shorter.`,
    ),
);
export const uploadOffset = whole('upload-offset');

const words = z.string().trim().max(1000, 'at most 1000 characters');
export const filmAskSchema = z.object({
  rungId: z.uuid('must be a rung of the team'),
  side: z.enum(SIDES, `must be one of ${SIDES.join(', ')}`),
  angle: z
    .string()
    .trim()
    .min(1, 'say from where: from the side, from behind, from the front')
    .max(200, 'at most 200 characters'),
  byDate: z.iso.date('must be a date').nullable(),
  words: words.default(''),
});
export type FilmAsk = z.output<typeof filmAskSchema>;

export const pinSchema = z.object({ pinned: z.boolean() });
