import { execFile } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { promisify } from 'node:util';
import { beforeAll, expect, test } from 'vitest';
import type { Actor } from '#lib/auth/actor.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import { deleteCheckIn } from '#lib/usecases/delete-check-in.ts';
import { lookAtFilm } from '#lib/usecases/looking/look-at-film.ts';
import { undoLook } from '#lib/usecases/looking/undo-look.ts';
import { type RebuiltDay, rebuildTeamRollups } from '#lib/usecases/rebuild-rollups.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { type Draws, draws } from '#tests/bench/detect/random.ts';
import { ownerQuery } from '../support/database.ts';
import { leadOf } from '../team/arrange.ts';
import { anotherPhone, aPhone, aTraining, NOW, type Phone, TODAY } from './arrange.ts';

const ACTS = 120;
let phone: Phone;
let clients: string[];
let acts: Record<string, number>;
let judged = 0;

beforeAll(async () => {
  phone = await aPhone('Rolled up');
  const people = [phone, await anotherPhone(phone.team, 'Two'), await anotherPhone(phone.team, 'Three')];
  clients = people.map(({ clientId }) => clientId);
  acts = await actAtRandom(
    people.map(({ actor }) => actor),
    draws(4711),
  );
  await judgeAtRandom(draws(815));
});

/** Submits (late ones too, rest days, several a day), corrections that move to another day, deletions; refused ones count as refused. */
async function actAtRandom(actors: Actor[], d: Draws): Promise<Record<string, number>> {
  const counts: Record<string, number> = { sent: 0, corrected: 0, deleted: 0, refused: 0 };
  const there = new Map<Actor, string[]>(actors.map((actor) => [actor, []]));
  for (let at = 0; at < ACTS; at += 1) {
    const actor = d.pick(actors);
    const ids = there.get(actor) ?? [];
    const old = ids.length > 0 && d.chance(0.5) ? d.pick(ids) : undefined;
    const gone = old !== undefined && d.chance(0.4);
    const body = aBody(d, old ?? null);
    try {
      if (gone) await deleteCheckIn(actor, old, NOW);
      else await submitCheckIn(actor, body, NOW);
      const what = gone ? 'deleted' : old ? 'corrected' : 'sent';
      counts[what] = (counts[what] ?? 0) + 1;
      there.set(actor, [...ids.filter((id) => id !== old), ...(gone ? [] : [body.id])]);
    } catch (error) {
      if (!(error instanceof AppError)) throw error;
      counts.refused = (counts.refused ?? 0) + 1;
    }
  }
  return counts;
}

/** What a coach saw of some of the sets on film, some of it taken back. */
async function judgeAtRandom(d: Draws): Promise<void> {
  const lead = leadOf(phone.team);
  const sets = await ownerQuery<Told>(
    `select s.client_id as "clientId", s.check_in_id as "checkInId", s.rung_id as "rungId", s.side, s.idx as index, k.date::text as date
     from check_in_set s join check_in k on k.id = s.check_in_id and k.replaced_at is null and k.deleted_at is null
     where s.client_id = any($1) and s.value is not null order by s.id`,
    [clients],
  );
  for (const { clientId, rungId, date, ...set } of sets.filter(() => d.chance(0.3))) {
    const clipId = randomUUID();
    await ownerQuery(
      `insert into clip (team_id, id, client_id, rung_id, side, filmed_on, storage_key, bytes, state, received_at)
       values ($1, $2::uuid, $3, $4, $5, $6, 'of ' || $2::text, 1, 'ready', $7)`,
      [phone.team.teamId, clipId, clientId, rungId, set.side, date, NOW],
    );
    const verdict = d.pick(['clean', 'cannot-see'] as const);
    const act = {
      act: 'verdict' as const,
      clipId,
      set: { told: true as const, ...set },
      verdict,
      faults: [],
    };
    const { actId } = await lookAtFilm(lead, act, NOW);
    judged += 1;
    if (d.chance(0.3)) await undoLook(lead, { clipId, id: actId }, NOW);
  }
}
type Told = {
  clientId: string;
  checkInId: string;
  rungId: string;
  side: 'both' | 'left' | 'right';
  index: number;
  date: string;
};

function aBody(d: Draws, correctsId: string | null) {
  const rest = d.chance(0.2);
  const rungId = d.pick(['H3.4', 'PU.3', 'OA.2'].map((key) => phone.rungs.get(key) ?? ''));
  const side = d.pick(['both', 'left', 'right'] as const);
  const sets = Array.from({ length: d.int(1, 4) }, (_, index) => ({
    rungId,
    side,
    index: index + 1,
    planned: 20,
    value: d.int(1, 20),
    how: d.pick(['typed', 'timed'] as const),
    clean: d.chance(0.8),
  }));
  const pain = { region: 'wrist-back', side: 'left', moment: 'after', kind: 'joint' } as const;
  return aTraining(phone, {
    kind: rest ? 'rest' : 'training',
    session: rest ? null : d.pick(['A', 'B', 'C']),
    date: addDays(TODAY, -d.int(0, 9)),
    effort: rest ? null : d.int(1, 10),
    minutes: rest || d.chance(0.2) ? null : d.int(10, 90),
    sets: rest ? [] : sets,
    pain: d.chance(0.5) ? [{ ...pain, value: d.int(0, 5), usual: false }] : [],
    correctsId,
  });
}

const kept = () =>
  ownerQuery(
    `select client_id, date::text, state, session_load_au, worst_pain, check_ins, facts from day_rollup
     where client_id = any($1) order by client_id, date`,
    [clients],
  );

async function rebuild(): Promise<RebuiltDay[]> {
  const mended: RebuiltDay[] = [];
  for await (const batch of rebuildTeamRollups(phone.team.scope)) mended.push(...batch.mended);
  return mended;
}

test('after random submits, corrections, deletions and verdicts no rollup is other than computed again', async () => {
  expect(acts.sent).toBeGreaterThan(15);
  expect(acts.corrected).toBeGreaterThan(5);
  expect(acts.deleted).toBeGreaterThan(5);
  expect(judged).toBeGreaterThan(5);
  const before = await kept();
  expect(before.length).toBeGreaterThan(10);
  expect(await rebuild()).toEqual([]);
  expect(await kept()).toEqual(before);
});

test('a planted drift is named and mended, by the program too, which ends with 0', async () => {
  const before = await kept();
  const [wrong, gone] = before;
  const [clientId] = clients;
  const plant = async () => {
    await ownerQuery(
      `update day_rollup set session_load_au = coalesce(session_load_au, 0) + 1 where client_id = $1 and date = $2`,
      [wrong?.client_id, wrong?.date],
    );
    await ownerQuery('delete from day_rollup where client_id = $1 and date = $2', [
      gone?.client_id,
      gone?.date,
    ]);
    await ownerQuery(
      `insert into day_rollup (team_id, client_id, date, state, check_ins, facts) values ($1, $2, '2026-01-01', 'rest', 1, '[]')`,
      [phone.team.teamId, clientId],
    );
  };
  await plant();
  const found = [
    { clientId: wrong?.client_id, date: wrong?.date, what: 'different' },
    { clientId: gone?.client_id, date: gone?.date, what: 'missing' },
    { clientId, date: '2026-01-01', what: 'too many' },
  ];
  expect(await rebuild()).toEqual(expect.arrayContaining(found));
  expect(await kept()).toEqual(before);

  await plant();
  const { stdout, stderr } = await promisify(execFile)(process.execPath, [
    '--import',
    'tsx',
    'prisma/rebuild.ts',
  ]);
  for (const day of found) expect(stdout).toContain(`${day.clientId} ${day.date} ${day.what}\n`);
  expect(stderr).toContain('3 mended');
  expect(await kept()).toEqual(before);
});

test('a week that does not say what its days say is named and mended', async () => {
  const weeks = () =>
    ownerQuery<{ client_id: string; week: string; days: string }>(
      'select client_id, week::text, days from week_rollup where client_id = any($1) order by client_id, week',
      [clients],
    );
  const before = await weeks();
  const days = await kept();
  expect(before.flatMap((row) => JSON.parse(`[${row.days}]`))).toEqual(
    days.map(({ date, facts }) => [date, JSON.parse(String(facts))]),
  );
  const [wrong, gone] = before;
  await ownerQuery(`update week_rollup set days = '["2026-01-01",[]]' where client_id = $1 and week = $2`, [
    wrong?.client_id,
    wrong?.week,
  ]);
  await ownerQuery('delete from week_rollup where client_id = $1 and week = $2', [
    gone?.client_id,
    gone?.week,
  ]);
  await ownerQuery(
    `insert into week_rollup (team_id, client_id, week, days) values ($1, $2, '2025-12-29', '["2026-01-01",[]]')`,
    [phone.team.teamId, clients[0]],
  );
  const found = await rebuild();
  expect(found).toHaveLength(3);
  expect(found).toEqual(
    expect.arrayContaining([
      { clientId: wrong?.client_id, date: wrong?.week, what: 'week' },
      { clientId: gone?.client_id, date: gone?.week, what: 'week' },
      { clientId: clients[0], date: '2025-12-29', what: 'week' },
    ]),
  );
  expect(await weeks()).toEqual(before);
});
