import { beforeEach, describe, expect, it } from 'vitest';
import { AppError } from '#lib/errors.ts';
import type { SettingsToSave } from '#lib/schemas/settings.ts';
import { saveSettings } from '#lib/usecases/save-settings.ts';
import { leadOf, NOW } from '#tests/integration/board/board-rows.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';

let team: TestTeam;
let clientId: string;
beforeEach(async () => {
  team = await makeTestTeam();
  ({ clientId } = await makeTestClient(team, { name: 'Maren Oduya' }));
});

const save = (body: Partial<SettingsToSave>, scope: string | null = null) =>
  saveSettings(leadOf(team), { values: {}, why: 'tried out', baseVersion: 0, ...body, clientId: scope }, NOW);
const kept = () =>
  ownerQuery('select version, client_id, values from team_settings where team_id = $1 order by version', [
    team.teamId,
  ]);
const refusal = (promise: Promise<unknown>): Promise<AppError> =>
  promise.then(
    () => expect.fail('was not refused'),
    (error: unknown) => (error instanceof AppError ? error : expect.fail(String(error))),
  );

describe('saveSettings', () => {
  it('keeps versions of the team and of clients in one row of numbers, each the whole of what differs', async () => {
    expect(await save({ values: { 'sideGap.watchPercent': 12, 'goneQuiet.watchDays': 7 } })).toEqual({
      version: 1,
    });
    expect(await save({ values: { 'sideGap.watchPercent': 14 } }, clientId)).toEqual({ version: 2 });
    expect(await save({ values: {}, baseVersion: 1 })).toEqual({ version: 3 });
    expect(await kept()).toEqual([
      { version: 1, client_id: null, values: { 'sideGap.watchPercent': 12 } }, // 7 days are the default: nothing differs
      { version: 2, client_id: clientId, values: { 'sideGap.watchPercent': 14 } },
      { version: 3, client_id: null, values: {} },
    ]);
    const audit = await ownerQuery(
      "select fields from audit where team_id = $1 and action = 'settings-saved' order by at, id",
      [team.teamId],
    );
    expect(audit).toHaveLength(3);
  });

  it('refuses the second of two coaches who opened the same numbers, and keeps nothing of theirs', async () => {
    await save({ values: { 'sideGap.watchPercent': 12 } });
    const refused = await refusal(save({ values: { 'sideGap.watchPercent': 11 } }));
    expect([refused.code, refused.message]).toEqual([
      'conflict',
      expect.stringContaining('since you opened the page'),
    ]);
    expect(await kept()).toHaveLength(1);
  });

  it('names the number that is refused', async () => {
    const refused = await refusal(save({ values: { 'painHigh.from': 7 } }));
    expect(refused.fields).toEqual({ 'values.painHigh.from': expect.stringContaining('between 0 and 6') });
  });

  it('refuses to save nothing, for a client of another team, and numbers that do not go with those of a client', async () => {
    expect((await refusal(save({}))).message).toContain('there is nothing to save');
    const other = await makeTestTeam('Other');
    const theirs = await makeTestClient(other);
    expect((await refusal(save({ values: { 'sideGap.watchPercent': 12 } }, theirs.clientId))).code).toBe(
      'not-found',
    );
    await save({ values: { 'sideGap.watchPercent': 14 } }, clientId);
    expect((await refusal(save({ values: { 'sideGap.actPercent': 13 } }))).message).toContain(
      'the numbers of Maren Oduya',
    );
  });

  it('gives two saves at once two versions, or refuses one', async () => {
    const both = await Promise.allSettled([
      save({ values: { 'sideGap.watchPercent': 12 } }),
      save({ values: { 'sideGap.watchPercent': 13 } }, clientId),
    ]);
    expect(both.map(({ status }) => status)).toEqual(['fulfilled', 'fulfilled']);
    expect((await kept()).map((row) => row.version)).toEqual([1, 2]);
  });
});
