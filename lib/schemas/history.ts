import { z } from 'zod';
import type { ClientHistory } from '#lib/domain/history.ts';
import { isZone } from '#lib/domain/local-date.ts';
import {
  DANGER_SIGNS,
  FAMILIES,
  FAULTS,
  GROUNDS,
  MEASURES,
  PAIN_KINDS,
  PAIN_MOMENTS,
  PAIN_REGIONS,
  PAIN_SIDES,
  SIDES,
  STANDINGS,
  SUPPORTS,
  TISSUES,
} from '#lib/domain/vocabulary.ts';
import { AppError } from '#lib/errors.ts';

const id = z.string().min(1).max(200);
const words = z.string().max(20_000);
const localDate = z.iso.date().describe("Calendar date YYYY-MM-DD in the client's own zone");
const instant = z.iso.datetime().describe('Instant, ISO 8601 in UTC, ends in Z');
const zone = z.string().min(1).max(100).refine(isZone, 'is not the name of a time zone, e.g. Europe/Lisbon');
const clockTime = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$|^24:00$/, 'is not a time of day, e.g. 09:00')
  .describe("HH:MM in the team's zone");
/** Ranges of movement can be under zero. */
const result = z.number().min(-1_000).max(1_000_000);
const tenth = z.int().min(0).max(10);
const amount = z.number().min(0).max(1_000_000);
const painSide = z.enum(PAIN_SIDES);
const region = z.enum(PAIN_REGIONS);
const side = z.enum(SIDES);

const client = z.strictObject({
  id,
  name: z.string().max(200),
  zone,
  standing: z.enum(STANDINGS),
  invitedAt: instant.nullable(),
  joinedAt: instant.nullable(),
  under18: z.boolean(),
  bodyMassKg: z.number().positive().max(500).nullable().describe('Body mass, kg'),
  toldWeekAu: amount.nullable().describe('Told usual week: days x minutes x effort, arbitrary units'),
  intakePain: z.array(z.strictObject({ region, side: painSide, value: tenth, sinceWeeks: amount })),
});

const rung = z.strictObject({
  id,
  key: z.string().max(50).nullable(),
  ladderId: id,
  ladder: z.string().max(200),
  skill: z.string().max(200),
  part: z.string().max(200),
  position: z.int().min(0).max(10_000),
  name: z.string().max(300),
  family: z.enum(FAMILIES),
  measure: z.enum(MEASURES),
  eachSide: z.boolean(),
  eachIsLeg: z.boolean(),
  pass: z.strictObject({
    sets: z.int().min(1).max(100),
    target: result,
    days: z.int().min(1).max(100),
    tries: z.int().min(1).max(1_000).nullable(),
  }),
  secondsPerRep: amount
    .nullable()
    .describe('Seconds under load a rep or a try; null when the value is seconds'),
  share: z.number().min(0).max(5).nullable().describe('Share of body weight on the hands, both together'),
  helpingShare: z.number().min(0).max(5).nullable(),
  weights: z
    .partialRecord(z.enum(TISSUES), z.number().min(0).max(1))
    .describe('Stress of the rung by tissue, 0-1'),
  usualWeeks: amount,
  needsFilm: z.boolean(),
  faults: z.array(z.enum(FAULTS)),
});

const planItem = z.strictObject({
  session: z.string().max(50),
  rungId: id,
  side,
  sets: z.int().min(0).max(100),
  target: result.nullable(),
  minutes: amount.nullable(),
  timesPerWeek: z.number().min(0).max(50),
});
const plan = z.strictObject({
  version: z.int().min(1),
  from: localDate,
  until: localDate.nullable(),
  sessionsPerWeek: z.int().min(0).max(50),
  items: z.array(planItem),
  easyWeeks: z.array(localDate),
  testWeeks: z.array(localDate),
  acceptedWeekAu: amount.nullable(),
  skillsInFocus: z.array(z.string().max(200)),
});

const set = z.strictObject({
  rungId: id,
  side,
  index: z.int().min(0).max(1_000),
  planned: result.nullable(),
  value: result.nullable().describe('Seconds, reps, degrees or cm; null: not done'),
  tried: z.int().min(0).max(10_000).nullable(),
  how: z.enum(['typed', 'timed', 'as-planned', 'not-done']),
  clean: z.boolean(),
  faults: z.array(z.enum(FAULTS)),
  support: z.enum(SUPPORTS).nullable(),
  addedKg: z.number().min(-300).max(500).nullable(),
});
const pain = z.strictObject({
  region,
  side: painSide,
  moment: z.enum(PAIN_MOMENTS),
  value: tenth.describe('Pain score, whole number 0-10'),
  kind: z.enum(PAIN_KINDS),
  usual: z.boolean().nullable(),
});
const checkIn = z.strictObject({
  id,
  date: localDate,
  zone,
  sentAt: instant,
  kind: z.enum(['training', 'rest']),
  session: z.string().max(50).nullable(),
  effort: tenth.nullable().describe('How hard, 0-10'),
  minutes: z.number().min(0).max(1_440).nullable(),
  ground: z.enum(GROUNDS).nullable(),
  sleepHours: z.number().min(0).max(24).nullable(),
  nothingHurts: z.boolean(),
  sets: z.array(set),
  pain: z.array(pain),
  dangerSigns: z.array(
    z.strictObject({
      sign: z.enum(DANGER_SIGNS),
      goneWithinMinute: z.boolean(),
      region: region.nullable(),
      side: painSide.nullable(),
    }),
  ),
  words,
});

/** The open file format of one client's history, version 1: what checks read and packs carry. */
export const historySchema = z
  .strictObject({
    formatVersion: z.literal(1),
    client,
    rungs: z.array(rung),
    plans: z.array(plan),
    placements: z.array(z.strictObject({ ladderId: id, side, rungId: id, from: localDate })),
    absences: z.array(
      z.strictObject({
        from: localDate,
        to: localDate.nullable(),
        kind: z.enum(['pause', 'holiday', 'illness']),
      }),
    ),
    checkIns: z.array(checkIn),
    questions: z.array(
      z.strictObject({
        id,
        askedAt: instant,
        text: words,
        answeredAt: instant.nullable(),
        answer: words.nullable(),
      }),
    ),
    limits: z.array(
      z.strictObject({
        tissue: z.enum(TISSUES).nullable(),
        region: region.nullable(),
        side: painSide.nullable(),
        rule: z.enum(['none', 'reduced', 'no-floor', 'no-overhead']),
        percent: z.number().min(0).max(100).nullable(),
        from: localDate,
        until: localDate.nullable(),
        who: z.string().max(300),
      }),
    ),
    steps: z.array(
      z.strictObject({
        kind: z.string().max(50),
        takenOn: localDate,
        ladderId: id.nullable(),
        side: side.nullable(),
        reviewOn: localDate.nullable(),
        words,
      }),
    ),
    seen: z.array(instant),
    clinicianWords: z.array(
      z.strictObject({ date: localDate, region: region.nullable(), side: painSide.nullable(), words }),
    ),
    films: z
      .array(
        z.strictObject({
          id,
          askedAt: instant,
          receivedAt: instant.nullable(),
          lookedAt: instant.nullable(),
          words,
        }),
      )
      .optional(),
    answering: z
      .strictObject({
        zone,
        days: z.array(z.int().min(1).max(7)).max(7).describe('1 Monday to 7 Sunday'),
        from: clockTime,
        to: clockTime,
      })
      .optional(),
  })
  .superRefine((history, context) => {
    const known = new Set(history.rungs.map((one) => one.id));
    const named: [string, (string | number)[]][] = [
      ...history.plans.flatMap((one, p) =>
        one.items.map((item, i): [string, (string | number)[]] => [
          item.rungId,
          ['plans', p, 'items', i, 'rungId'],
        ]),
      ),
      ...history.placements.map((one, i): [string, (string | number)[]] => [
        one.rungId,
        ['placements', i, 'rungId'],
      ]),
      ...history.checkIns.flatMap((one, c) =>
        one.sets.map((item, i): [string, (string | number)[]] => [
          item.rungId,
          ['checkIns', c, 'sets', i, 'rungId'],
        ]),
      ),
    ];
    for (const [rungId, path] of named) {
      if (!known.has(rungId)) {
        context.addIssue({
          code: 'custom',
          path,
          message: `names the rung "${rungId}", which is not in rungs`,
        });
      }
    }
  });

const SHOWN_PROBLEMS = 20;

/** Reads a history from outside. Refuses with the path of every problem (first 20). */
export function parseHistory(value: unknown): ClientHistory {
  const result = historySchema.safeParse(value);
  if (result.success) return result.data;
  const fields: Record<string, string> = {};
  for (const issue of result.error.issues.slice(0, SHOWN_PROBLEMS)) {
    const path = issue.path.map(String).join('.') || '(the whole file)';
    fields[path] ??= issue.message;
  }
  const listed = Object.entries(fields).map(([path, message]) => `${path}: ${message}`);
  const more =
    result.error.issues.length > SHOWN_PROBLEMS
      ? `; and ${result.error.issues.length - SHOWN_PROBLEMS} more`
      : '';
  throw new AppError('invalid', `Not a history file. ${listed.join('; ')}${more}`, { fields });
}
