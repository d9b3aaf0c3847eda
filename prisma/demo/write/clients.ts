import { randomUUID } from 'node:crypto';
import type { TeamPg } from '#lib/db/client.ts';
import { CONSENT_KINDS, CONSENT_VERSION } from '#lib/domain/consent.ts';
import { holdOf } from '#lib/domain/intake/told-at-start.ts';
import { skillKey } from '#lib/library/copy-plan.ts';
import { DEMO_SIGN_IN } from '#lib/library/demo-sign-in.ts';
import type { DemoClient } from '../life.ts';
import { insertRows } from './insert.ts';
import { coachOf, idOf, type Place } from './place.ts';

/** The clients themselves with their way in, intake, consents, guardians, goals, limits, words and absences. */
export async function writeClients(tx: TeamPg, clients: DemoClient[], place: Place): Promise<void> {
  const users = new Map(clients.map((client) => [client.history.client.id, randomUUID()]));
  await writeUsers(tx, clients, users, place);
  await insertRows(
    tx,
    'client',
    {
      id: 'uuid',
      user_id: 'uuid',
      coach_id: 'uuid',
      name: 'text',
      email: 'text',
      zone: 'text',
      standing: 'text',
      under18: 'boolean',
      birth_year: 'int',
      body_mass_kg: 'float8',
      told_week_au: 'float8',
      goal: 'text',
      usual_session_minutes: 'int',
      invited_at: 'timestamptz',
      joined_at: 'timestamptz',
      left_at: 'timestamptz',
      note: 'text',
      created_at: 'timestamptz',
    },
    clients.map((each) => ({ ...toClientRow(each, place), user_id: users.get(each.history.client.id) })),
  );
  await writeIntake(tx, clients);
  await writeGoals(tx, clients, place);
  await writeRules(tx, clients, place);
}

async function writeUsers(
  tx: TeamPg,
  clients: DemoClient[],
  users: Map<string, string>,
  place: Place,
): Promise<void> {
  const rows = clients.map(({ history, extra }) => {
    const id = users.get(history.client.id) ?? randomUUID();
    const way = place.passwords.get(extra.slug);
    return {
      id,
      name: history.client.name,
      email: way?.email ?? `${id}@link-only.invalid`,
      hash: way?.hash ?? null,
      at: history.client.joinedAt,
    };
  });
  await tx.client.query(
    `with r as (select * from jsonb_to_recordset($1::jsonb) as r(id uuid, name text, email text, hash text, at timestamptz)),
       made as (
         insert into "user" (id, name, email, email_verified, created_at, updated_at)
         select id, name, email, true, at, at from r returning id
       )
     insert into account (user_id, account_id, provider_id, password, created_at, updated_at)
     select r.id, r.id::text, 'credential', r.hash, r.at, r.at from r join made on made.id = r.id where r.hash is not null`,
    [JSON.stringify(rows)],
  );
}

function toClientRow(client: DemoClient, place: Place) {
  const { history, extra } = client;
  const { client: who } = history;
  return {
    id: who.id,
    coach_id: coachOf(place, client),
    name: who.name,
    email: `${extra.slug}@clients.example`,
    zone: who.zone,
    standing: who.standing,
    under18: who.under18,
    birth_year: extra.birthYear,
    body_mass_kg: who.bodyMassKg,
    told_week_au: who.toldWeekAu,
    goal: extra.goal,
    usual_session_minutes: extra.sessionMinutes,
    invited_at: who.invitedAt,
    joined_at: who.joinedAt,
    left_at: who.standing === 'left' ? (history.checkIns.at(-1)?.sentAt ?? null) : null,
    note: extra.note,
    created_at: who.invitedAt,
  };
}

async function writeIntake(tx: TeamPg, clients: DemoClient[]): Promise<void> {
  await insertRows(
    tx,
    'intake',
    {
      client_id: 'uuid',
      answers: 'jsonb',
      changes: 'jsonb',
      completed_at: 'timestamptz',
      created_at: 'timestamptz',
    },
    clients.map(({ history, extra }) => ({
      client_id: history.client.id,
      answers: extra.start?.answers ?? {
        ...extra.answers,
        goal: extra.goal,
        pain: history.client.intakePain,
      },
      changes: (extra.start?.changes ?? []).map((change) => ({
        ...change,
        by: DEMO_SIGN_IN[extra.coach === 'lead' ? 'coach' : 'secondCoach'].name,
      })),
      completed_at: history.client.joinedAt,
      created_at: history.client.joinedAt,
    })),
  );
  await insertRows(
    tx,
    'consent',
    { client_id: 'uuid', kind: 'text', text_version: 'text', given_at: 'timestamptz', given_by: 'text' },
    clients.flatMap(({ history, extra }) =>
      CONSENT_KINDS.map((kind) => ({
        client_id: history.client.id,
        kind,
        text_version: CONSENT_VERSION,
        given_at: history.client.joinedAt,
        given_by: extra.guardian ?? history.client.name,
      })),
    ),
  );
  await insertRows(
    tx,
    'guardian',
    { client_id: 'uuid', name: 'text', email: 'text', agreed_at: 'timestamptz' },
    clients.flatMap(({ history, extra }) =>
      extra.guardian
        ? [
            {
              client_id: history.client.id,
              name: extra.guardian,
              email: `guardian-of-${extra.slug}@clients.example`,
              agreed_at: history.client.joinedAt,
            },
          ]
        : [],
    ),
  );
}

async function writeGoals(tx: TeamPg, clients: DemoClient[], place: Place): Promise<void> {
  await insertRows(
    tx,
    'goal',
    { client_id: 'uuid', skill_id: 'uuid', from_date: 'date', ended_on: 'date' },
    clients.flatMap(({ history, extra }) => {
      const kept = new Set(history.plans.at(-1)?.skillsInFocus);
      const droppedOn =
        history.plans.find((plan) => plan.skillsInFocus.length < extra.goalSkills.length)?.from ?? null;
      return extra.goalSkills.map((skill) => ({
        client_id: history.client.id,
        skill_id: idOf(place.skillIds, skillKey(skill)),
        from_date: history.plans[0]?.from ?? null,
        ended_on: kept.has(skill) ? null : droppedOn,
      }));
    }),
  );
}

async function writeRules(tx: TeamPg, clients: DemoClient[], place: Place): Promise<void> {
  await insertRows(
    tx,
    'limit_rule',
    {
      client_id: 'uuid',
      tissue: 'text',
      region: 'text',
      side: 'text',
      rule: 'text',
      percent: 'float8',
      from_date: 'date',
      until_date: 'date',
      who: 'text',
    },
    clients.flatMap(({ history }) =>
      history.limits.map(({ from, until, ...limit }) => ({
        ...limit,
        client_id: history.client.id,
        from_date: from,
        until_date: until,
      })),
    ),
  );
  await insertRows(
    tx,
    'clinician_word',
    { client_id: 'uuid', by_id: 'uuid', date: 'date', region: 'text', side: 'text', words: 'text' },
    clients.flatMap((each) =>
      each.history.clinicianWords.map((word) => ({
        ...word,
        client_id: each.history.client.id,
        by_id: coachOf(place, each),
      })),
    ),
  );
  await writeStarts(tx, clients, place);
  await insertRows(
    tx,
    'absence',
    { client_id: 'uuid', kind: 'text', from_date: 'date', to_date: 'date', said_at: 'timestamptz' },
    clients.flatMap(({ history }) =>
      history.absences.map((absence) => ({
        client_id: history.client.id,
        kind: absence.kind,
        from_date: absence.from,
        to_date: absence.to,
        said_at: `${absence.from}T06:00:00Z`,
      })),
    ),
  );
}

/** What a yes of a start held or holds, and the words about it. */
async function writeStarts(tx: TeamPg, clients: DemoClient[], place: Place): Promise<void> {
  const started = clients.flatMap((each) => (each.extra.start ? [{ each, start: each.extra.start }] : []));
  await insertRows(
    tx,
    'limit_rule',
    {
      client_id: 'uuid',
      rule: 'text',
      from_date: 'date',
      until_date: 'date',
      ended_at: 'timestamptz',
      who: 'text',
      words: 'text',
      told: 'text',
    },
    started.flatMap(({ each, start }) =>
      start.holds.map(({ told, from, until }) => ({
        ...holdOf(told),
        client_id: each.history.client.id,
        from_date: from,
        until_date: until,
        ended_at: until === null ? null : each.history.client.joinedAt,
      })),
    ),
  );
  await insertRows(
    tx,
    'clinician_word',
    {
      client_id: 'uuid',
      by_id: 'uuid',
      date: 'date',
      words: 'text',
      clinician: 'text',
      told: 'text',
      lifts: 'boolean',
      review_on: 'date',
    },
    started.flatMap(({ each, start }) =>
      start.words.map(({ reviewOn, ...word }) => ({
        ...word,
        client_id: each.history.client.id,
        by_id: coachOf(place, each),
        lifts: true,
        review_on: reviewOn,
      })),
    ),
  );
}
