import { z } from 'zod';
import { amount, json, localDate, moment, uuid, whole, words } from './record-values.ts';

/** The client, who speaks for them, what was told, agreed and ruled out; people who are named, by name alone. */
export const PEOPLE = {
  client: z.array(
    z.strictObject({
      id: uuid,
      coach_id: uuid,
      name: words,
      email: words.nullable(),
      zone: words,
      standing: words,
      under18: z.boolean(),
      birth_year: whole.nullable(),
      body_mass_kg: amount.nullable(),
      told_week_au: amount.nullable(),
      goal: words,
      usual_session_minutes: whole.nullable(),
      invited_at: moment,
      joined_at: moment.nullable(),
      left_at: moment.nullable(),
      note: words.optional(),
      created_at: moment,
    }),
  ),
  guardian: z.array(
    z.strictObject({
      id: uuid,
      client_id: uuid,
      name: words,
      email: words.nullable(),
      agreed_at: moment.nullable(),
      text_version: words.nullable().default(null),
      declined_at: moment.nullable().default(null),
      withdrawn_at: moment.nullable().default(null),
      created_at: moment,
    }),
  ),
  intake: z.array(
    z.strictObject({
      id: uuid,
      client_id: uuid,
      answers: json,
      draft: json.nullable().default(null),
      draft_at: moment.nullable().default(null),
      sent_key: uuid.nullable().default(null),
      changes: json.default([]),
      completed_at: moment.nullable(),
      created_at: moment,
    }),
  ),
  consent: z.array(
    z.strictObject({
      id: uuid,
      client_id: uuid,
      kind: words,
      text_version: words,
      given_at: moment,
      withdrawn_at: moment.nullable(),
      given_by: words,
      withdrawn_by: words.nullable(),
      /** Name of the team that it was given to. */
      to_team: words,
    }),
  ),
  limit_rule: z.array(
    z.strictObject({
      id: uuid,
      client_id: uuid,
      tissue: words.nullable(),
      region: words.nullable(),
      side: words.nullable(),
      rule: words,
      percent: amount.nullable(),
      from_date: localDate,
      until_date: localDate.nullable(),
      who: words,
      words: words,
      told: words.nullable().default(null),
      ended_at: moment.nullable(),
      created_at: moment,
    }),
  ),
  clinician_word: z.array(
    z.strictObject({
      id: uuid,
      client_id: uuid,
      by_id: uuid.nullable(),
      date: localDate,
      region: words.nullable(),
      side: words.nullable(),
      words: words,
      clinician: words.default(''),
      told: words.nullable().default(null),
      lifts: z.boolean().default(false),
      review_on: localDate.nullable(),
      created_at: moment,
    }),
  ),
  absence: z.array(
    z.strictObject({
      id: uuid,
      client_id: uuid,
      kind: words,
      from_date: localDate,
      to_date: localDate.nullable(),
      said_at: moment,
    }),
  ),
  private_note: z
    .array(
      z.strictObject({
        id: uuid,
        client_id: uuid,
        by_id: uuid,
        text: words,
        created_at: moment,
      }),
    )
    .optional(),
  goal: z.array(
    z.strictObject({
      id: uuid,
      client_id: uuid,
      skill_id: uuid,
      wanted_by: localDate.nullable(),
      from_date: localDate,
      ended_on: localDate.nullable(),
    }),
  ),
  standing_change: z.array(
    z.strictObject({
      id: uuid,
      client_id: uuid,
      by_id: uuid,
      before: words,
      after: words,
      from_date: localDate,
      why: words,
      behind: json,
      created_at: moment,
      applied_at: moment.nullable(),
      undone_at: moment.nullable(),
    }),
  ),
  client_move: z.array(
    z.strictObject({
      id: uuid,
      client_id: uuid,
      from_id: uuid,
      to_id: uuid,
      by_id: uuid,
      note: words,
      at: moment,
      read_at: moment.nullable(),
    }),
  ),
  team_settings: z.array(
    z.strictObject({
      id: uuid,
      version: whole,
      client_id: uuid.nullable(),
      values: json,
      by_id: uuid.nullable(),
      why: words,
      created_at: moment,
    }),
  ),
  member: z.array(
    z.strictObject({
      id: uuid,
      name: words,
    }),
  ),
};
