import { beforeAll, describe, expect, it } from 'vitest';
import { replayClient } from '#lib/checks/replay/replay-client.ts';
import type { Stay } from '#lib/checks/replay/replay-reasons.ts';
import { DEFAULT_LIMITS, type Limits, limitsWith } from '#lib/checks/thresholds.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { HISTORY_DAYS, loadHistories } from '#lib/db/histories.ts';
import { listReplayActs } from '#lib/db/replay.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { CHECK_KINDS } from '#lib/domain/vocabulary.ts';
import { nightInstant } from '#lib/handover/night-instant.ts';
import { actOnReason } from '#lib/usecases/act-on-reason.ts';
import { replaySettings } from '#lib/usecases/replay-settings.ts';
import { runNightBatch } from '#lib/usecases/run-night-batch.ts';
import { undoAct } from '#lib/usecases/undo-act.ts';
import { leadOf } from '#tests/integration/board/board-rows.ts';
import { makeRung, trainingClient } from '#tests/integration/night/arrange.ts';
import { makeTestTeam, ownerQuery, type TestTeam } from '#tests/integration/support/database.ts';

const FIRST = '2026-02-01';
const LAST = '2026-03-31';
const dates: string[] = [];
for (let date = FIRST; date <= LAST; date = addDays(date, 1)) dates.push(date);
const now = new Date(Date.parse(nightInstant(LAST, 'UTC')) + 300_000);

/** Sooner quiet, sooner sore, and slower to close. */
const OTHER: Partial<Limits> = {
  'goneQuiet.watchDays': 4,
  'goneQuiet.watchGap': 1,
  'painLingering.share': 0.1,
  'reason.clearNights': 4,
  'notSeen.days': 20,
};

type Lived = { team: TestTeam; clientIds: string[] };

/** A team that lives through sixty nights under some numbers, with what its coach does on the way. */
async function live(changed: Partial<Limits>): Promise<Lived> {
  const team = await makeTestTeam();
  const rungId = await makeRung(team);
  await ownerQuery(
    `insert into team_settings (team_id, version, values, by_id, why) values ($1, 1, $2, $3, 'test')`,
    [team.teamId, changed, team.memberId],
  );
  const sore = Object.fromEntries(dates.filter((_, day) => day % 6 === 0).map((date) => [date, 4]));
  const clientIds = [
    await trainingClient(team, {
      rungId,
      from: FIRST,
      to: LAST,
      name: 'Sore',
      pain: { ...sore, '2026-02-21': 7 },
    }),
    await trainingClient(team, { rungId, from: FIRST, to: '2026-03-06', name: 'Silent' }),
    await trainingClient(team, { rungId, from: '2026-03-01', to: LAST, name: 'New' }),
  ];
  for (const date of dates) {
    const due = new Date(Date.parse(nightInstant(date, 'UTC')) + 300_000);
    const here = clientIds.filter((_, index) => index < 2 || date >= '2026-03-01');
    expect(await runNightBatch(team.scope, { localDate: date, clientIds: here }, due)).toMatchObject({
      failed: 0,
    });
    await coach(team, clientIds, date);
  }
  return { team, clientIds };
}

/** What the coach does some mornings; an act that was undone is as none. */
async function coach(team: TestTeam, [sore = '', silent = '']: string[], date: string): Promise<void> {
  const morning = new Date(`${addDays(date, 1)}T08:00:00Z`);
  const act = (clientId: string, body: object) =>
    actOnReason(
      leadOf(team),
      { clientId, words: 'known', ...body } as Parameters<typeof actOnReason>[1],
      morning,
    );
  if (date === '2026-02-24') await act(sore, { act: 'done', rightToTell: true });
  if (date === '2026-03-12') await act(silent, { act: 'put-aside', until: 'date', date: '2026-03-20' });
  if (date === '2026-03-24') {
    const { actId } = await act(silent, { act: 'done' });
    await undoAct(leadOf(team), { actId }, new Date(morning.getTime() + 8000));
  }
}

/** From and until of every stay that the nights wrote down, first to last. */
async function livedStays(clientId: string): Promise<string[]> {
  const rows = await ownerQuery<{ kind: string; key: string; what: string; at: Date; night: string | null }>(
    `select r.kind, r.subject_key as key, e.what, e.at, e.night::text from reason_event e join reason r on r.id = e.reason_id
     where r.client_id = $1 and e.what in ('raised', 'reopened', 'closed', 'counted', 'done')
       and not exists (select from reason_event u where u.reason_id = e.reason_id and u.what = 'undone'
         and u.body ->> 'actId' = e.body ->> 'actId')
     order by e.at, e.id`,
    [clientId],
  );
  return rows
    .map(({ kind, key, what, at, night }) =>
      [
        kind,
        key,
        what === 'reopened' ? 'raised' : what === 'done' ? 'closed' : what,
        night ?? at.toISOString().slice(0, 10),
      ].join(' '),
    )
    .sort();
}

function replayedStays(stays: readonly Stay[]): string[] {
  return stays
    .flatMap(({ kind, key, from, until, onBoard }) => [
      `${kind} ${key} raised ${from}`,
      ...(onBoard !== null && onBoard !== from ? [`${kind} ${key} counted ${onBoard}`] : []),
      ...(until === null ? [] : [`${kind} ${key} closed ${until}`]),
    ])
    .sort();
}

async function replayed({ team, clientIds }: Lived, clientId: string, limits: Limits): Promise<string[]> {
  const from = clientIds.indexOf(clientId) === 2 ? '2026-03-01' : FIRST;
  const { history, acts } = await withTeamPg(team.scope, async (tx) => ({
    history: (await loadHistories(tx, [clientId], { from: addDays(FIRST, -HISTORY_DAYS), asOf: LAST })).get(
      clientId,
    ),
    acts: (await listReplayActs(tx, [clientId], FIRST)).get(clientId) ?? [],
  }));
  if (!history) throw new Error('no history');
  const nights = dates
    .filter((date) => date >= from)
    .map((date) => ({ date, instant: nightInstant(date, 'UTC') }));
  const asked = {
    history,
    acts,
    nights,
    nightsDone: 0,
    touched: CHECK_KINDS,
    settled: CHECK_KINDS,
    heldBack: [],
    shared: true,
  };
  return replayedStays(replayClient(asked, [limits, DEFAULT_LIMITS]).before.stays);
}

describe('a replay', () => {
  let plain: Lived;
  let other: Lived;
  beforeAll(async () => {
    plain = await live({});
    other = await live(OTHER);
  }, 240_000);

  it('says what the nights really raised, counted and closed, under the defaults and under other numbers', async () => {
    let said = 0;
    for (const lived of [plain, other]) {
      const limits = lived === plain ? DEFAULT_LIMITS : limitsWith(OTHER);
      for (const clientId of lived.clientIds) {
        const real = await livedStays(clientId);
        said += real.length;
        expect(await replayed(lived, clientId, limits)).toEqual(real);
      }
    }
    expect(said).toBeGreaterThan(30);
  });

  it('is not the same under the two, or the test would see nothing', async () => {
    const [mine = ''] = plain.clientIds;
    expect(await replayed(plain, mine, limitsWith(OTHER))).not.toEqual(await livedStays(mine));
  });

  it('names who would have had what, before anything is saved, and changes nothing', async () => {
    const rows = () =>
      ownerQuery('select count(*)::int as n, max(updated_at) as at from reason where team_id = $1', [
        plain.team.teamId,
      ]);
    const untouched = await rows();
    const part = await replaySettings(
      leadOf(plain.team),
      { clientId: null, values: { 'goneQuiet.watchDays': 4, 'goneQuiet.watchGap': 1 }, skip: 0 },
      now,
    );
    expect(part).toMatchObject({ total: 3, clients: 3, next: null });
    expect(part.changes.map(({ name, what, stay }) => `${name} ${what} ${stay.kind}`)).toContain(
      'Silent moved gone-quiet',
    );
    expect(part.after.clientMornings).toBeGreaterThanOrEqual(part.before.clientMornings);
    expect(part.before.reasons).toBeGreaterThan(0);
    expect(await rows()).toEqual(untouched);
  });

  it('leaves a client’s own numbers over the team’s, and tries those of one client alone', async () => {
    const [, silent = ''] = plain.clientIds;
    await ownerQuery(
      `insert into team_settings (team_id, version, client_id, values, by_id, why) values ($1, 2, $2, $3, $4, 'test')`,
      [plain.team.teamId, silent, { 'goneQuiet.watchDays': 9 }, plain.team.memberId],
    );
    const asked = { values: { 'goneQuiet.watchDays': 4 }, skip: 0 };
    const team = await replaySettings(leadOf(plain.team), { ...asked, clientId: null }, now);
    expect(team.changes.filter(({ name }) => name === 'Silent')).toEqual([]);
    const alone = await replaySettings(leadOf(plain.team), { ...asked, clientId: silent }, now);
    expect(alone.total).toBe(1);
    expect(alone.changes.map(({ name }) => name)).toContain('Silent');
  });

  it('refuses a number at odds with another, and a client of another team', async () => {
    const stranger = replaySettings(
      leadOf(plain.team),
      { clientId: other.clientIds[0] ?? '', values: {}, skip: 0 },
      now,
    );
    await expect(stranger).rejects.toThrow('This client is not here.');
    const odd = replaySettings(
      leadOf(plain.team),
      { clientId: null, values: { 'goneQuiet.actDays': 2 }, skip: 0 },
      now,
    );
    await expect(odd).rejects.toThrow('goneQuiet.actDays: must not be under 7');
  });
});
