import { expect, it } from 'vitest';
import { teamScope, withTeamPg } from '#lib/db/client.ts';
import { loadHistories } from '#lib/db/histories.ts';
import { demoClients } from '#prisma/demo/histories.ts';
import { seedDemo } from '#prisma/demo/seed.ts';
import { ownerQuery } from '../support/database.ts';

const NOW = new Date('2026-11-25T15:00:00Z');

it('fills an empty database once, with the histories as they were told and nights behind them', async () => {
  const seeded = await seedDemo({ now: NOW, nights: 4 });
  expect(seeded?.clients).toBe(24);
  expect(await seedDemo({ now: NOW, nights: 4 })).toBeUndefined();

  const teams = await ownerQuery<{ id: string; name: string; clients: number }>(
    `select t.id, t.name, (select count(*)::int from client c where c.team_id = t.id) as clients from team t order by t.name`,
  );
  expect(teams.map(({ name, clients }) => [name, clients])).toEqual([
    ['Low Wall', 24],
    ['North Beam', 2],
  ]);

  const told = demoClients('2026-11-25');
  const scope = teamScope(teams[0]?.id ?? '');
  const ids = told.map(({ history }) => history.client.id);
  const rolledUp = await withTeamPg(scope, (tx) => loadHistories(tx, ids, { from: '2025-01-01' }));
  const written = await withTeamPg(scope, (tx) => loadHistories(tx, ids, { from: null }));
  for (const { history, extra } of told) {
    const loaded = rolledUp.get(history.client.id);
    expect(loaded, extra.slug).toEqual(written.get(history.client.id));
    expect(loaded?.checkIns.length, extra.slug).toBe(history.checkIns.length);
    expect(loaded?.seen, extra.slug).toEqual(history.seen);
    expect(loaded?.plans.map((plan) => plan.items.length)).toEqual(
      history.plans.map((plan) => plan.items.length),
    );
    const keys = new Map(loaded?.rungs.map((rung) => [rung.id, rung.key]));
    const placed = (of: { rungId: string; side: string; from: string }[]) =>
      of.map(({ rungId, side, from }) => `${from} ${side} ${keys.get(rungId) ?? rungId}`).sort();
    expect(placed(loaded?.placements ?? []), extra.slug).toEqual(placed(history.placements));
  }

  const [night] = await ownerQuery<{ done: number; failed: number }>(
    `select count(*) filter (where done_at is not null)::int as done, count(*) filter (where failed_at is not null)::int as failed from night_client`,
  );
  expect(night?.failed).toBe(0);
  expect(night?.done).toBe(seeded?.nights);
  const open = await ownerQuery<{ tier: string | null }>('select tier from reason where closed_at is null');
  expect(open.length).toBeGreaterThan(5);
}, 90_000);
