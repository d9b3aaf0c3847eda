import { expect, test } from 'vitest';
import { runNightBatch } from '#lib/usecases/run-night-batch.ts';
import { leadOf } from '#tests/integration/clients/support.ts';
import { makeRung, TRAINED, trainingClient } from '#tests/integration/night/arrange.ts';
import { makeTestTeam, ownerQuery } from '#tests/integration/support/database.ts';
import { agreeTo, ladderNow, place, rungEdit } from './arrange.ts';

// Sets of 12 to 14 s every second day: far from 3 x 20 s, and past 3 x 10 s.
test('a lower pass mark is what the next night reads: the next rung is earned, by its new mark', async () => {
  const team = await makeTestTeam();
  const lead = leadOf(team);
  const rungId = await makeRung(team);
  const [row] = await ownerQuery<{ id: string }>('select ladder_id as id from rung where id = $1', [rungId]);
  const ladderId = row?.id ?? '';
  const clientId = await trainingClient(team, { rungId, ...TRAINED });
  for (const side of ['left', 'right'])
    await place(team, clientId, { ladderId, rungId, side, from: '2026-02-01' });
  const night = async (localDate: string) => {
    await runNightBatch(team.scope, { localDate, clientIds: [clientId] }, new Date(`${localDate}T23:30:00Z`));
    const rows = await ownerQuery<{ sentence: string }>(
      `select sentence from reason where client_id = $1 and kind = 'step-up-earned' and closed_at is null`,
      [clientId],
    );
    return rows.map((one) => one.sentence);
  };
  expect(await night('2026-03-30')).toEqual([]);
  const ladder = await ladderNow(team, ladderId);
  const pass = { sets: '3', target: '10', days: '3', tries: '' };
  await agreeTo(lead, ladderId, rungEdit(ladder, rungId, { rung: { pass }, drill: { shareSource: 'cp' } }));
  const said = await night('2026-03-31');
  expect(said.length).toBeGreaterThan(0);
  expect(said.join(' ')).toContain('3 × 10 s');
});
