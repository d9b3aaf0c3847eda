import { randomUUID } from 'node:crypto';
import { beforeAll, expect, it } from 'vitest';
import { withTeamPg } from '#lib/db/client.ts';
import { loadHistories } from '#lib/db/histories.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { parseHistory } from '#lib/schemas/history.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';
import { checkIn, makeRung, trainingClient } from './arrange.ts';

let team: TestTeam;
let rungId: string;
let clientId: string;

beforeAll(async () => {
  team = await makeTestTeam();
  rungId = await makeRung(team);
  clientId = await trainingClient(team, {
    rungId,
    from: '2026-03-01',
    to: '2026-03-20',
    pain: { '2026-03-11': 4 },
  });
  await fillEverything(team, clientId, rungId);
});

const load = (from: string | null, ids = [clientId]) =>
  withTeamPg(team.scope, (tx) => loadHistories(tx, ids, { from }));

it('reads the same value from the rollups and from the tables', async () => {
  const [rolled, raw] = [await load('2026-01-01'), await load(null)];
  expect(rolled.get(clientId)?.checkIns).toHaveLength(10);
  expect(rolled.get(clientId)).toEqual(raw.get(clientId));
});

it('is what the history format says, with every part filled', async () => {
  const history = (await load(null)).get(clientId);
  expect(parseHistory(history)).toEqual(history);
  expect(history).toMatchObject({
    client: { zone: 'UTC', standing: 'in-training', joinedAt: '2026-03-01T08:00:00.000Z' },
    placements: [{ rungId, side: 'left', from: '2026-03-01' }],
    absences: [{ from: '2026-03-05', to: null, kind: 'holiday' }],
    questions: [{ text: 'Rings or bars?', askedAt: '2026-03-06T10:00:00.000Z', answer: 'Bars.' }],
    limits: [
      {
        tissue: 'wrist-back',
        rule: 'reduced',
        percent: 50,
        from: '2026-03-07',
        until: '2026-03-21',
        who: 'coach',
      },
    ],
    steps: [{ kind: 'hold', takenOn: '2026-03-08', reviewOn: '2026-03-22' }],
    seen: ['2026-03-09T09:00:00.000Z'],
    clinicianWords: [{ date: '2026-03-10', region: 'wrist-back', side: 'right', words: 'may train' }],
    plans: [
      {
        version: 1,
        from: '2026-03-01',
        until: null,
        easyWeeks: ['2026-03-15'],
        items: [{ session: 'A', rungId, target: 20 }],
      },
    ],
  });
  expect(history?.rungs.map((rung) => rung.id)).toEqual([rungId]);
});

it('carries films and the hours in which the team answers, where there are any', async () => {
  const hours = { zone: 'Europe/Lisbon', days: [1, 2, 3, 4, 5], from: '08:00', to: '18:00' };
  expect((await load(null)).get(clientId)).not.toHaveProperty('films');
  const film = randomUUID();
  await ownerQuery(
    `insert into film_request (team_id, id, client_id, by_id, rung_id, side, angle, words, created_at)
     values ($1, $2, $3, $4, $5, 'both', 'side', 'from the side', '2026-03-12T10:00:00Z')`,
    [team.teamId, film, clientId, team.memberId, rungId],
  );
  await ownerQuery(
    `insert into clip (team_id, client_id, request_id, rung_id, side, filmed_on, storage_key, bytes, state, received_at)
     values ($1, $2, $3, $4, 'both', '2026-03-13', 'one', 1, 'ready', '2026-03-13T10:00:00Z')`,
    [team.teamId, clientId, film, rungId],
  );
  await ownerQuery('update team set answering_hours = $2 where id = $1', [
    team.teamId,
    JSON.stringify(hours),
  ]);
  const times = {
    askedAt: '2026-03-12T10:00:00.000Z',
    receivedAt: '2026-03-13T10:00:00.000Z',
    lookedAt: null,
  };
  expect((await load(null)).get(clientId)).toMatchObject({
    films: [{ id: film, words: 'from the side', ...times }],
    answering: hours,
  });
});

it('leaves out what was corrected, deleted and before the window', async () => {
  const { clientId: other } = await makeTestClient(team, { zone: 'UTC' });
  const replaced = await checkIn(team, other, { date: '2026-03-02', rungId });
  await ownerQuery('update check_in set replaced_at = now() where id = $1', [replaced]);
  const kept = await checkIn(team, other, { date: '2026-03-02', rungId, effort: 8 });
  await checkIn(team, other, { date: '2026-02-01', rungId });
  const [windowed, all] = [await load('2026-03-01', [other]), await load(null, [other])];
  expect(windowed.get(other)?.checkIns.map((each) => each.id)).toEqual([kept]);
  expect(all.get(other)?.checkIns.map((each) => each.date)).toEqual(['2026-02-01', '2026-03-02']);
});

it('begins at the day that is asked for, whichever of the week that is', async () => {
  const { clientId: other } = await makeTestClient(team, { zone: 'UTC' });
  const dates = Array.from({ length: 12 }, (_, day) => addDays('2026-02-25', day));
  for (const date of dates) await checkIn(team, other, { date, rungId });
  for (const from of dates) {
    const read = (await load(from, [other])).get(other)?.checkIns.map((each) => each.date);
    expect(read, from).toEqual(dates.filter((date) => date >= from));
  }
});

it('uses the same number of queries for one client and for thirty', async () => {
  const many = await Promise.all(Array.from({ length: 30 }, () => makeTestClient(team)));
  const [one, thirty] = [
    await queriesFor([clientId]),
    await queriesFor([clientId, ...many.map((each) => each.clientId)]),
  ];
  expect(thirty).toBe(one);
});

it('gives nothing of another team', async () => {
  const stranger = await makeTestTeam('Other');
  const { clientId: theirs } = await makeTestClient(stranger);
  expect((await load(null, [theirs])).size).toBe(0);
});

async function queriesFor(ids: string[]): Promise<number> {
  return withTeamPg(team.scope, async (tx) => {
    let queries = 0;
    const counting = new Proxy(tx.client, {
      get: (target, name) => {
        if (name === 'query') queries += 1;
        const value = Reflect.get(target, name);
        return typeof value === 'function' ? value.bind(target) : value;
      },
    });
    await loadHistories({ teamId: tx.teamId, client: counting }, ids, { from: '2026-01-01' });
    return queries;
  });
}

async function fillEverything({ teamId, memberId }: TestTeam, client: string, rung: string): Promise<void> {
  const [plan, session, question] = [randomUUID(), randomUUID(), randomUUID()];
  const statements: [string, unknown[]][] = [
    [
      `insert into plan (team_id, id, client_id, version, from_date, sessions_per_week, easy_weeks, test_weeks, skills_in_focus)
      values ($1, $2, $3, 1, '2026-03-01', 3, '{2026-03-15}', '{}', '{Handstand}')`,
      [teamId, plan, client],
    ],
    [
      `insert into plan_session (team_id, id, plan_id, label, position) values ($1, $2, $3, 'A', 1)`,
      [teamId, session, plan],
    ],
    [
      `insert into plan_item (team_id, session_id, rung_id, side, position, sets, target, times_per_week)
      values ($1, $2, $3, 'both', 1, 3, 20, 3)`,
      [teamId, session, rung],
    ],
    [
      `insert into placement (team_id, client_id, ladder_id, rung_id, side, from_date)
      select $1, $2, ladder_id, id, 'left', '2026-03-01' from rung where id = $3`,
      [teamId, client, rung],
    ],
    [
      `insert into absence (team_id, client_id, kind, from_date) values ($1, $2, 'holiday', '2026-03-05')`,
      [teamId, client],
    ],
    [
      `insert into question (team_id, id, client_id, text, asked_at, answered_at)
      values ($1, $2, $3, 'Rings or bars?', '2026-03-06T10:00:00Z', '2026-03-07T10:00:00Z')`,
      [teamId, question, client],
    ],
    [
      `insert into answer (team_id, question_id, by_id, text) values ($1, $2, $3, 'Bars.')`,
      [teamId, question, memberId],
    ],
    [
      `insert into limit_rule (team_id, client_id, tissue, rule, percent, from_date, until_date, who)
      values ($1, $2, 'wrist-back', 'reduced', 50, '2026-03-07', '2026-03-21', 'coach')`,
      [teamId, client],
    ],
    [
      `insert into step_taken (team_id, client_id, by_id, kind, taken_on, review_on)
      values ($1, $2, $3, 'hold', '2026-03-08', '2026-03-22')`,
      [teamId, client, memberId],
    ],
    [
      `insert into step_taken (team_id, client_id, by_id, kind, taken_on, undone_at)
      values ($1, $2, $3, 'look', '2026-03-08', now())`,
      [teamId, client, memberId],
    ],
    [
      `insert into seen_mark (team_id, client_id, by_id, at) values ($1, $2, $3, '2026-03-09T09:00:00Z')`,
      [teamId, client, memberId],
    ],
    [
      `insert into clinician_word (team_id, client_id, date, region, side, words)
      values ($1, $2, '2026-03-10', 'wrist-back', 'right', 'may train')`,
      [teamId, client],
    ],
    [
      `insert into intake (team_id, client_id, answers)
      values ($1, $2, '{"pain": [{"region": "wrist-back", "side": "right", "value": 1, "sinceWeeks": 4}]}')`,
      [teamId, client],
    ],
  ];
  for (const [sql, values] of statements) await ownerQuery(sql, values);
}
