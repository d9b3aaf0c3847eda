import { z } from 'zod';
import { PLACED } from '#lib/balance/landmarks.ts';
import { MASS_MODELS } from '#lib/balance/segment-tables.ts';

const side = z.number('must be a place in the picture').min(0).max(20_000);
const point = z.strictObject({ x: side, y: side });
const placed = z.strictObject(
  Object.fromEntries(PLACED.map((name) => [name, point])) as Record<(typeof PLACED)[number], typeof point>,
);
const plumb = z
  .strictObject({ top: point, bottom: point })
  .refine(
    ({ top, bottom }) => Math.hypot(top.x - bottom.x, top.y - bottom.y) >= 20,
    'the plumb line is too short: put its ends far apart',
  );
const scale = z.discriminatedUnion('by', [
  z.strictObject({
    by: z.literal('hand'),
    metres: z.number().min(0.12, 'a hand is 12 to 25 cm long').max(0.25, 'a hand is 12 to 25 cm long'),
  }),
  z.strictObject({
    by: z.literal('stature'),
    metres: z.number().min(1, 'stature is 100 to 230 cm').max(2.3, 'stature is 100 to 230 cm'),
  }),
]);

/** Joints as they were placed on a still; `second`: all of them once more, to see how well they can be placed. */
export const stillFrame = z.strictObject({
  placed,
  second: placed.nullable().default(null),
  plumb,
  scale,
  model: z.enum(MASS_MODELS, { error: `must be one of: ${MASS_MODELS.join(', ')}` }),
});
export type StillFrameBody = z.output<typeof stillFrame>;
