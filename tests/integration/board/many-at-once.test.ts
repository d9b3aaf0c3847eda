import { expect, it } from 'vitest';
import { loadBoard } from '#lib/usecases/load-board.ts';
import { makeTestClient, makeTestTeam } from '#tests/integration/support/database.ts';
import { leadOf, NOW, openReason } from './board-rows.ts';

const namesOf = async (team: Awaited<ReturnType<typeof makeTestTeam>>, filter = {}) =>
  (await loadBoard(leadOf(team), filter, NOW)).groups
    .flatMap(({ rows }) => rows.map(({ name }) => name))
    .sort();

it('forty boards at once, of two teams and two filters, are each their own; what was written before is in all', async () => {
  const teams = [await makeTestTeam('Low Wall'), await makeTestTeam('High Wall')] as const;
  for (const [index, team] of teams.entries()) {
    const { clientId } = await makeTestClient(team, { name: `First of ${index}` });
    await openReason(team, clientId);
  }
  // More than there are connections: whoever waits for a shared reading must not hold one.
  const boards = () =>
    Promise.all(
      Array.from({ length: 40 }, (_, index) =>
        namesOf(teams[index % 2 === 0 ? 0 : 1], index % 4 < 2 ? {} : { q: 'second' }),
      ),
    );
  const before = boards();
  const [team] = teams;
  const { clientId } = await makeTestClient(team, { name: 'Second' });
  await openReason(team, clientId);
  const after = await boards();
  after.forEach((names, index) => {
    const [other, filtered] = [index % 2 === 1, index % 4 >= 2];
    expect(names).toEqual(
      other ? (filtered ? [] : ['First of 1']) : filtered ? ['Second'] : ['First of 0', 'Second'],
    );
  });
  expect((await before)[1]).toEqual(['First of 1']);
});
