import { randomUUID } from 'node:crypto';
import { expect, it } from 'vitest';
import { addStill } from '#lib/usecases/add-still.ts';
import { askQuestion } from '#lib/usecases/ask-question.ts';
import { keepStillFrame } from '#lib/usecases/stills/keep-still-frame.ts';
import { loadStillPage } from '#lib/usecases/stills/load-still-page.ts';
import { firstPlacing } from '#lib/views/still/placing.ts';
import { aPhoto } from '#tests/fixtures/pictures.ts';
import { leadOf } from '../clients/support.ts';
import { makeTestTeam, ownerQuery } from '../support/database.ts';
import { aPhone, NOW } from './arrange.ts';

it('keeps what was placed on a still, for the team of the client and nobody else', async () => {
  const phone = await aPhone('Placed');
  const { id: questionId } = await askQuestion(phone.actor, { id: randomUUID(), text: 'Straight?' }, NOW);
  const stillId = randomUUID();
  await addStill(phone.actor, { questionId, stillId, bytes: await aPhoto() }, NOW);
  const lead = leadOf(phone.team);
  const empty = await loadStillPage(lead, stillId);
  expect(empty).toMatchObject({ client: { id: phone.clientId, name: 'Placed' }, frames: [] });
  const size = empty?.size ?? { width: 0, height: 0 };
  expect(size.width).toBeGreaterThan(10);

  const { placed, plumb } = firstPlacing(size);
  const body = {
    placed,
    second: null,
    plumb,
    scale: { by: 'hand', metres: 0.181 },
    model: 'winter',
  } as const;
  const { id } = await keepStillFrame(lead, stillId, body, NOW);
  const later = new Date(NOW.getTime() + 60_000);
  await keepStillFrame(lead, stillId, { ...body, second: placed }, later);
  const frames = (await loadStillPage(lead, stillId))?.frames ?? [];
  expect(frames).toMatchObject([
    { second: placed, at: later },
    { id, stillId, placed, plumb, model: 'winter' },
  ]);
  expect(
    await ownerQuery("select client_id from audit where action = 'joints-placed' and team_id = $1", [
      phone.team.teamId,
    ]),
  ).toHaveLength(2);

  const beside = { ...placed, ankle: { x: size.width + 1, y: 2 } };
  await expect(keepStillFrame(lead, stillId, { ...body, placed: beside }, NOW)).rejects.toMatchObject({
    code: 'invalid',
    fields: { 'placed.ankle': expect.stringContaining('move it inside') },
  });
  const far = { ...placed, elbow: { x: 0, y: 0 } };
  await expect(keepStillFrame(lead, stillId, { ...body, placed: far }, NOW)).rejects.toThrow('times as long');
  const none = Object.fromEntries(Object.keys(placed).map((name) => [name, { x: 1, y: 1 }])) as typeof placed;
  await expect(keepStillFrame(lead, stillId, { ...body, second: none }, NOW)).rejects.toThrow(
    'has no length',
  );

  const other = leadOf(await makeTestTeam('Other'));
  expect(await loadStillPage(other, stillId)).toBeUndefined();
  await expect(keepStillFrame(other, stillId, body, NOW)).rejects.toMatchObject({ code: 'not-found' });
});
