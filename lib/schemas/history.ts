import { z } from 'zod';
import type { ClientHistory } from '#lib/domain/history.ts';
import {
  CLIP_VERDICTS,
  DANGER_SIGNS,
  FAMILIES,
  FAULTS,
  LIMIT_RULES,
  MEASURES,
  STANDINGS,
  SUPPORTS,
  TISSUES,
} from '#lib/domain/vocabulary.ts';
import { AppError } from '#lib/errors.ts';
import { assessment } from './history-assessment.ts';
import { checkIn } from './history-check-in.ts';
import {
  amount,
  clockTime,
  id,
  instant,
  localDate,
  painSide,
  region,
  result,
  side,
  tenth,
  words,
  zone,
} from './history-values.ts';

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
  intakeSigns: z
    .strictObject({
      date: localDate,
      signs: z.array(z.strictObject({ sign: z.enum(DANGER_SIGNS), wordOn: localDate.nullable() })),
    })
    .optional()
    .describe('Danger signs told at the start, and when a word of a clinician about each was recorded'),
  toldEffort: z.number().min(0).max(10).optional().describe('How hard a session of the told week was, 0-10'),
  breakWeeks: amount.optional().describe('Weeks without training before the start, told at intake'),
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
  upsideDown: z.boolean().optional().describe('The head comes below the heart; absent: taken as no'),
  usualWeeks: amount,
  usualDaysHere: z
    .strictObject({ days: amount, passed: z.int().min(0).max(1_000_000) })
    .optional()
    .describe("Median days on the rung over the team's clients (Kaplan-Meier), and how many passed it"),
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
  support: z.enum(SUPPORTS).nullable().optional(),
  stopRule: z.string().max(300).optional(),
  notTwoDaysRunning: z.boolean().optional(),
  pairedWith: id
    .nullable()
    .optional()
    .describe('Rung of the line of the same session it is done together with, as a pyramid'),
  noKitRungId: id.nullable().optional().describe('Rung that stands in for it in a week without kit'),
});
const planSession = z.strictObject({
  label: z.string().max(50),
  restSeconds: amount.nullable().describe('Rest between sets, s'),
  warmUp: words.optional(),
  warmUpMinutes: amount.optional(),
  minutes: amount.nullable().optional(),
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
  noKitWeeks: z.array(localDate).optional(),
  sessions: z.array(planSession).optional().describe('In the order in which they are trained'),
  by: z.string().max(200).nullable().optional(),
  why: words.optional(),
  notes: words.optional().describe('Words to the client about this version'),
});

/** The open file format of one client's history, version 1: what checks read and packs carry. */
export const historySchema = z
  .strictObject({
    formatVersion: z.literal(1, 'must be 1, the version this program reads: export again'),
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
        rule: z.enum(LIMIT_RULES),
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
    goals: z
      .array(
        z.strictObject({
          skill: z.string().max(200),
          from: localDate,
          wantedBy: localDate.nullable(),
          endedOn: localDate.nullable(),
        }),
      )
      .optional(),
    films: z
      .array(
        z.strictObject({
          id,
          askedAt: instant,
          receivedAt: instant.nullable(),
          lookedAt: instant.nullable(),
          words,
          rungId: id.optional(),
          side: side.optional(),
          verdicts: z
            .array(
              z.strictObject({
                filmedOn: localDate,
                side,
                checkInId: id.nullable(),
                index: z.int().min(0).max(1_000).nullable(),
                verdict: z.enum(CLIP_VERDICTS),
                faults: z.array(z.enum(FAULTS)),
                at: instant,
              }),
            )
            .optional()
            .describe('What coaches saw on it, the newest of each set'),
        }),
      )
      .optional(),
    startTests: z
      .array(
        z.strictObject({
          id,
          askedAt: instant,
          movedAt: instant.nullable().describe('The newest answer so far'),
          doneAt: instant.nullable().describe('Nothing was left to answer, or the coach placed by it'),
        }),
      )
      .optional()
      .describe('Tests asked for at a start'),
    assessments: z.array(assessment).optional(),
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
