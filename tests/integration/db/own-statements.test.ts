import { setImmediate } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { withTeamPg } from '#lib/db/client.ts';
import { makeTestTeam, ownerQuery } from '../support/database.ts';

it.each([{ named: false }, { named: true }])(
  'a part that goes on after another one failed sends nothing more: %o',
  async (options) => {
    const team = await makeTestTeam('Together');
    let goOn: () => void = () => undefined;
    const held = new Promise<void>((done) => {
      goOn = done;
    });
    let late: Promise<unknown> | undefined;
    const act = withTeamPg(
      team.scope,
      (tx) => {
        const write = () => tx.client.query(`update team set name = 'Late' where id = $1`, [tx.teamId]);
        late = held.then(write);
        return Promise.all([late, setImmediate().then(() => Promise.reject(new Error('unreadable')))]);
      },
      options,
    );
    await expect(act).rejects.toThrow('unreadable');
    // The connection is another act's by now.
    await withTeamPg(team.scope, async (tx) => {
      await tx.client.query('select 1');
      goOn();
      await expect(late).rejects.toThrow('the transaction is over');
    });
    expect(await ownerQuery('select name from team where id = $1', [team.teamId])).toEqual([
      { name: 'Together' },
    ]);
  },
);
