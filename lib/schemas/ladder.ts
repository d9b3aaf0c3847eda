import { z } from 'zod';
import { KIT, STANDS_ON } from '#lib/domain/equipment.ts';
import { FAMILIES, FAULTS, MEASURES, SUPPORTS, TISSUES } from '#lib/domain/vocabulary.ts';
import { plainText } from './plain-text.ts';
import { blankIsNull, typedNumber } from './typed.ts';

const LONGEST_NAME = 120;
const number = <Type extends z.ZodType>(type: Type) => z.preprocess(typedNumber, type);
const numberOrNull = <Type extends z.ZodType>(type: Type) =>
  z.preprocess((value) => typedNumber(blankIsNull(value)), type);
const writeANumber = 'write a number';
const toLong = (limit: number) => (text: string) => text.length <= limit;

export const libraryName = plainText
  .refine((text) => text !== '', 'write a name')
  .refine(toLong(LONGEST_NAME), `is longer than ${LONGEST_NAME} characters: shorten it`);
const words = plainText.refine(toLong(1_000), 'is longer than 1,000 characters: shorten it');

export const ladderAbout = z.strictObject({
  name: libraryName,
  partId: z.uuid('choose a part'),
  family: z.enum(FAMILIES, 'choose a stress family'),
  clean: words,
  faults: z.array(z.enum(FAULTS, 'choose faults from the list')).max(FAULTS.length),
});

const pass = z.strictObject({
  sets: number(z.int('whole sets').min(1, 'at least 1 set').max(30, 'at most 30 sets')),
  target: number(z.number(writeANumber).min(-360, 'at least -360').max(3_600, 'at most 3,600')),
  days: number(z.int('whole days').min(1, 'at least 1 day').max(30, 'at most 30 days')),
  tries: numberOrNull(z.int('whole tries').min(1, 'at least 1 try').max(100, 'at most 100 tries').nullable()),
});

const rung = z.strictObject({
  name: libraryName,
  pass,
  usualWeeks: number(z.number(writeANumber).min(0.5, 'at least half a week').max(200, 'at most 200 weeks')),
  needsFilm: z.boolean(),
  note: words,
});

const part = z.number(writeANumber).min(0, 'at least 0').max(1, 'at most 1');
/** Per cent on the form, a part of one everywhere else. */
const percent = z.preprocess((value) => {
  const given = typedNumber(blankIsNull(value));
  return typeof given === 'number' ? given / 100 : given;
}, z.number(writeANumber).min(0, 'at least 0 %').max(1, 'at most 100 %').nullable());

const drill = z.strictObject({
  family: z.preprocess(blankIsNull, z.enum(FAMILIES, 'choose a stress family').nullable()),
  measure: z.enum(MEASURES, 'choose how it is counted'),
  eachSide: z.boolean(),
  eachIsLeg: z.boolean(),
  secondsPerRep: numberOrNull(
    z.number(writeANumber).min(0.5, 'at least 0.5 s').max(600, 'at most 600 s').nullable(),
  ),
  share: percent,
  helpingShare: percent,
  shareSource: words,
  weights: z.partialRecord(z.enum(TISSUES), numberOrNull(part.nullable())).transform(withoutNothing),
  equipment: z.array(z.enum([...STANDS_ON, ...KIT], 'choose from the list')),
  upsideDown: z.boolean('say whether the head comes below the heart').default(false),
  camera: words,
});

function withoutNothing(weights: Partial<Record<(typeof TISSUES)[number], number | null>>) {
  const kept: Partial<Record<(typeof TISSUES)[number], number>> = {};
  for (const tissue of TISSUES) {
    const weight = weights[tissue];
    if (weight) kept[tissue] = weight;
  }
  return kept;
}

const swaps = z
  .array(
    z.strictObject({
      insteadId: z.uuid('choose a rung'),
      tissue: z.enum(TISSUES, 'choose a tissue'),
      support: z.preprocess(blankIsNull, z.enum(SUPPORTS, 'choose a support').nullable()),
      why: words,
    }),
  )
  .max(150, 'at most 150 swaps');

type Rungs = { rung: z.infer<typeof rung>; drill: z.infer<typeof drill>; swaps?: z.infer<typeof swaps> };

function fits({ rung: one, drill: of, swaps: kept = [] }: Rungs, context: z.RefinementCtx): void {
  const say = (path: (string | number)[], message: string) =>
    context.addIssue({ code: 'custom', path, message });
  const counted = of.measure === 'reps' || of.measure === 'made-tried';
  const range = of.measure === 'range-up' || of.measure === 'range-down';
  if (counted && of.secondsPerRep === null)
    say(['drill', 'secondsPerRep'], 'write how many seconds one rep or try is under load');
  if (!counted && of.secondsPerRep !== null)
    say(['drill', 'secondsPerRep'], 'stays empty: the result is in its own unit already');
  if (!range && one.pass.target <= 0) say(['rung', 'pass', 'target'], 'must be more than 0');
  if (of.measure === 'made-tried' && one.pass.tries === null)
    say(['rung', 'pass', 'tries'], 'write of how many tries');
  if (of.measure === 'made-tried' && (one.pass.tries ?? 0) < one.pass.target && one.pass.tries !== null)
    say(['rung', 'pass', 'tries'], `must be at least the ${one.pass.target} that are to be made`);
  if (of.measure !== 'made-tried' && one.pass.tries !== null)
    say(['rung', 'pass', 'tries'], 'stays empty: only tries made are counted out of tries');
  if (of.share !== null && of.shareSource === '')
    say(['drill', 'shareSource'], 'write where the share comes from; "common practice, no source" will do');
  if (of.helpingShare !== null && (!of.eachSide || of.share === null))
    say(['drill', 'helpingShare'], 'stays empty: only a drill of one side with a share has a helping hand');
  if ((of.share ?? 0) + (of.helpingShare ?? 0) > 1.0001)
    say(['drill', 'helpingShare'], 'and the working hand together are more than 100 %');
  if (Object.keys(of.weights).length === 0)
    say(['drill', 'weights'], 'give at least one tissue a weight above 0');
  const seen = new Set<string>();
  for (const [index, swap] of kept.entries()) {
    const key = `${swap.insteadId} ${swap.tissue} ${swap.support}`;
    if (seen.has(key)) say(['swaps', index, 'insteadId'], 'is there already for this tissue');
    seen.add(key);
  }
}

const rungParts = { rung, drill };
const step = z.strictObject({ name: libraryName, pass, weight: numberOrNull(part.nullable()) });
const rungId = z.uuid('choose a rung');

const opening = z
  .strictObject({
    opens: z.uuid('choose the rung that opens'),
    needsAll: z
      .array(
        z
          .array(rungId)
          .min(1, 'choose a rung, or take this away')
          .max(10, 'at most 10 rungs of which any will do'),
      )
      .max(10, 'at most 10'),
    orOnSupports: z.array(z.enum(SUPPORTS, 'choose supports from the list')).max(SUPPORTS.length),
    under18CoachTick: z.boolean(),
    words: words.refine((text) => text !== '', 'say it in words: the gap finder repeats them'),
  })
  .superRefine((one, context) => {
    if (one.needsAll.length === 0 && !one.under18CoachTick)
      context.addIssue({
        code: 'custom',
        path: ['needsAll'],
        message: 'asks for nothing: add what must stand before, or remove this opening',
      });
  });

const edit = z.discriminatedUnion('act', [
  ladderAbout.extend({ act: z.literal('about') }),
  z
    .strictObject({ act: z.literal('rung'), rungId, ...rungParts, swaps, drillFor: z.enum(['all', 'this']) })
    .superRefine(fits),
  z.strictObject({ act: z.literal('add-rung'), above: z.uuid().nullable(), ...rungParts }).superRefine(fits),
  z.strictObject({
    act: z.literal('openings'),
    openings: z.array(opening).max(40, 'at most 40 openings'),
  }),
  z.strictObject({ act: z.literal('order'), rungIds: z.array(rungId).max(200) }),
  z.strictObject({
    act: z.literal('split'),
    rungId,
    tissue: z.enum(TISSUES).nullable(),
    steps: z.array(step).min(1, 'at least one step').max(11, 'at most 11 steps'),
  }),
  z.strictObject({ act: z.enum(['retire-rung', 'put-back-rung']), rungId }),
  z.strictObject({ act: z.enum(['retire-ladder', 'put-back-ladder']) }),
]);

/** One edit of a ladder. `base`: the ladder as the coach had it open; `agreed`: the touches the coach said yes to. */
export const ladderChange = z.strictObject({
  base: z.string().max(100),
  agreed: z.string().max(100).nullable().default(null),
  edit,
});
export type LadderChange = z.infer<typeof ladderChange>;

export const ladderAddress = z.object({ ladderId: z.uuid() });
export const rungAddress = z.object({ ladderId: z.uuid(), rungId: z.uuid() });
