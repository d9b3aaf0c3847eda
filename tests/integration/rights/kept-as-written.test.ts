import { beforeAll, describe, expect, it } from 'vitest';
import { withTeamPg } from '#lib/db/client.ts';
import { aPhone, type Phone } from '../check-in/arrange.ts';
import { ownerQuery } from '../support/database.ts';
import { fillClient } from './fill-client.ts';

let phone: Phone;
const asApp = (sql: string, ...values: unknown[]) =>
  withTeamPg(phone.team.scope, (tx) => tx.client.query(sql, values));

/** What is only ever added to, each with an update and a deletion that would rewrite it. */
const WRITTEN: readonly (readonly [table: string, update: string])[] = [
  ['audit', 'action = action'],
  ['reason_event', 'what = what'],
  ['plan_session', 'label = label'],
  ['plan_item', 'sets = sets'],
  ['consent', 'given_by = given_by'],
  ['erasure', 'receipt = receipt'],
];

beforeAll(async () => {
  phone = await aPhone('Anahit');
  await fillClient(phone);
});

describe('the history of alerts, plans, consents and acts', () => {
  it.each(WRITTEN)('of %s is neither changed nor deleted by the application', async (table, update) => {
    await expect(asApp(`update ${table} set ${update}`)).rejects.toThrow(/permission denied/);
    await expect(asApp(`delete from ${table}`)).rejects.toThrow(/permission denied/);
    await expect(asApp(`truncate ${table}`)).rejects.toThrow(/permission denied/);
  });

  it.each(['audit', 'reason_event', 'plan_session'])(
    'of %s stays even when a right was given by mistake',
    async (table) => {
      await ownerQuery(`grant update, delete on ${table} to plumbline_app`);
      try {
        const [, update] = WRITTEN.find(([name]) => name === table) ?? [];
        await expect(asApp(`update ${table} set ${update}`)).rejects.toThrow(/never changed/);
        await expect(asApp(`delete from ${table}`)).rejects.toThrow(/never changed/);
      } finally {
        await ownerQuery(`revoke update, delete on ${table} from plumbline_app`);
      }
    },
  );

  it('a plan is not rewritten, and one that was trained by or followed is not deleted', async () => {
    const { clientId, team } = phone;
    await expect(asApp(`update plan set notes = 'other'`)).rejects.toThrow(/permission denied/);
    await ownerQuery('update check_in set plan_version = 1 where client_id = $1', [clientId]);
    await expect(asApp('delete from plan where version = 1')).rejects.toThrow(/trained by or followed/);
    await asApp(
      `insert into plan (team_id, client_id, by_id, version, from_date, sessions_per_week)
       select $1, $2, $3, v, '2026-11-20', 3 from generate_series(2, 3) v`,
      team.teamId,
      clientId,
      team.memberId,
    );
    await expect(asApp('delete from plan where version = 2')).rejects.toThrow(/trained by or followed/);
    await asApp('delete from plan where version in (2, 3)'); // a step undone at once
    const left = await ownerQuery<{ version: number }>('select version from plan where client_id = $1', [
      clientId,
    ]);
    expect(left).toEqual([{ version: 1 }]);
  });

  it('a consent is taken back, and its words and time stay', async () => {
    await asApp('update consent set withdrawn_at = now(), withdrawn_by = $1', 'Anahit');
    await expect(asApp(`update consent set text_version = '9'`)).rejects.toThrow(/permission denied/);
  });
});
