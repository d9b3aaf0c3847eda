import { expect, test } from 'vitest';
import type { PlanDraftInput } from '#lib/schemas/plan-draft.ts';
import { savePlanDraft } from '#lib/usecases/save-plan-draft.ts';
import { makeTestClient, makeTestTeam, ownerQuery } from '#tests/integration/support/database.ts';
import { copyLibraryInto, leadOf } from './support.ts';

const NOW = new Date('2026-11-25T07:00:00.000Z');

const draftOf = (rungId: string, over: object = {}): PlanDraftInput => ({
  source: 'reason',
  lines: [
    {
      session: 'A',
      rungId,
      side: 'both',
      sets: 4,
      target: 5,
      timesPerWeek: 2,
      why: 'Met the pass mark twice.',
      ...over,
    },
  ],
});

const kept = (clientId: string) =>
  ownerQuery<{ id: string; body: object }>('select id, body from plan_draft where client_id = $1', [
    clientId,
  ]);

test('a draft is kept whole, with an address that opens it', async () => {
  const team = await makeTestTeam();
  const { clientId } = await makeTestClient(team);
  const { both } = await copyLibraryInto(team);
  const saved = await savePlanDraft(leadOf(team), { clientId, draft: draftOf(both) }, NOW);
  expect(saved.address).toBe(`/clients/${clientId}/plan?draft=${saved.draftId}`);
  expect(await kept(clientId)).toEqual([
    {
      id: saved.draftId,
      body: {
        source: 'reason',
        reasonId: null,
        why: '',
        notes: '',
        dropSkills: [],
        easyWeeks: [],
        lines: [
          expect.objectContaining({
            act: 'put',
            rungId: both,
            minutes: null,
            why: 'Met the pass mark twice.',
          }),
        ],
      },
    },
  ]);
});

test('a draft of a foreign rung, of a wrong side or of nothing is refused by its field', async () => {
  const [mine, other] = [await makeTestTeam(), await makeTestTeam('Other')];
  const { clientId } = await makeTestClient(mine);
  const [own, foreign] = [await copyLibraryInto(mine), await copyLibraryInto(other)];
  const save = (draft: PlanDraftInput) => savePlanDraft(leadOf(mine), { clientId, draft }, NOW);
  await expect(save(draftOf(foreign.both))).rejects.toMatchObject({
    code: 'invalid',
    fields: { 'lines.0.rungId': expect.stringContaining('choose one') },
  });
  await expect(save(draftOf(own.both, { side: 'left' }))).rejects.toMatchObject({
    fields: { 'lines.0.side': expect.stringContaining('choose both') },
  });
  await expect(save(draftOf(own.both, { target: null }))).rejects.toMatchObject({
    fields: { 'lines.0.target': 'write a target, or minutes of practice' },
  });
  await expect(save({ source: 'copy', lines: [] })).rejects.toMatchObject({
    fields: { lines: expect.stringContaining('at least one line') },
  });
  expect(await kept(clientId)).toEqual([]);
});

test("a draft for another team's client is refused", async () => {
  const [mine, other] = [await makeTestTeam(), await makeTestTeam('Other')];
  const { clientId } = await makeTestClient(other);
  const { both } = await copyLibraryInto(mine);
  const saved = savePlanDraft(leadOf(mine), { clientId, draft: draftOf(both) }, NOW);
  await expect(saved).rejects.toMatchObject({ code: 'not-found' });
});
