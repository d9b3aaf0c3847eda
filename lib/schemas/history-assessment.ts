import { z } from 'zod';
import { FILM_SHOWS } from '#lib/planning/gaps/gap-types.ts';
import { id, localDate, result, side, tenth } from './history-values.ts';

const name = z.string().max(300);
const assessedSide = z.strictObject({
  side,
  film: z.enum(FILM_SHOWS).describe('What one slow lowering or attempt on film shows'),
  rung: name.nullable().describe('The rung the result was on'),
  unit: z
    .string()
    .max(20)
    .nullable()
    .describe("Of value: s, reps, made, degrees or cm, by the rung's measure"),
  sets: z.int().min(0).max(1_000).nullable().describe('Sets, or tries where good ones are counted'),
  value: result.nullable(),
  clean: z.boolean().nullable(),
  pain: tenth.nullable().describe('Worst joint or tendon pain in the part, 0-10'),
});

/** What a coach saw and measured of the parts that a skill asks, by name. */
export const assessment = z.strictObject({
  id,
  date: localDate,
  skill: name,
  aim: name.nullable().describe('The rung the client wants to be able to do'),
  by: name.nullable(),
  kit: z.array(z.string().max(50)).max(50).describe('Kit at hand beside a floor and a wall'),
  parts: z.array(
    z.strictObject({
      part: name.nullable(),
      ladder: name.nullable(),
      asked: name.nullable().describe('The rung that is asked of the part'),
      sides: z.array(assessedSide).max(3),
    }),
  ),
});
