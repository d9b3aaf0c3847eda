import { randomUUID } from 'node:crypto';
import { expect, it } from 'vitest';
import { withTeamPg } from '#lib/db/client.ts';
import { openRecordRows } from '#lib/db/record-rows.ts';
import { askQuestion } from '#lib/usecases/ask-question.ts';
import { aPhone } from '../check-in/arrange.ts';
import { ownerQuery } from '../support/database.ts';

it('counts what was asked late in the evening to the client’s own day, far from Greenwich too', async () => {
  const phone = await aPhone('West');
  await ownerQuery('update client set zone = $2 where id = $1', [phone.clientId, 'America/Los_Angeles']);
  // 22:30 on the 24th there.
  const at = new Date('2026-11-25T06:30:00.000Z');
  await askQuestion(phone.actor, { id: randomUUID(), text: 'How long do I wait?' }, at);
  const asked = async (from: string, to: string) =>
    withTeamPg(phone.team.scope, async (tx) => {
      const table = openRecordRows(tx, { clientId: phone.clientId, from, to, notes: false }).find(
        ({ name }) => name === 'question',
      );
      let count = 0;
      for await (const batch of table?.rows() ?? []) count += batch.length;
      return count;
    });
  expect(await asked('2026-11-01', '2026-11-24')).toBe(1);
  expect(await asked('2026-11-25', '2026-11-30')).toBe(0);
});
