import { beforeAll, expect, test } from 'vitest';
import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findOutline } from '#lib/db/library-outline.ts';
import { outlineChange } from '#lib/schemas/outline.ts';
import { editOutline } from '#lib/usecases/edit-outline.ts';
import { makeLadder } from '#lib/usecases/make-ladder.ts';
import { copyLibraryInto, leadOf } from '#tests/integration/clients/support.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';
import { NOW, opened, plan } from './arrange.ts';

let team: TestTeam;
let lead: Actor;
beforeAll(async () => {
  team = await makeTestTeam();
  lead = leadOf(team);
  await copyLibraryInto(team);
});

const edit = (change: unknown) => editOutline(lead, outlineChange.parse(change), NOW);
const outline = () => withTeamPg(team.scope, findOutline);
const skill = async (name: string) => (await outline()).skills.find((one) => one.name === name);

test('a skill and a part are added last; a ladder is made in the part, empty, and takes its first rung', async () => {
  await edit({ act: 'add-skill', name: ' Human flag ' });
  const made = await skill('Human flag');
  const all = (await outline()).skills;
  expect(all.at(-1)).toEqual(made);
  await edit({ act: 'add-part', skillId: made?.id, name: 'Side hold' });
  const part = (await outline()).parts.find((one) => one.skillId === made?.id);
  expect(part?.name).toBe('Side hold');
  const about = {
    name: 'Flag holds',
    partId: part?.id ?? '',
    family: 'straight-arm-push',
    clean: '',
    faults: [],
  } as const;
  const { ladderId } = await makeLadder(lead, { ...about, faults: [] });
  const { ladder, send } = await opened(lead, ladderId);
  expect(ladder).toMatchObject({ name: 'Flag holds', skill: 'Human flag', part: 'Side hold', rungs: [] });
  const rung = {
    name: 'Tucked',
    pass: { sets: '3', target: '5', days: '2', tries: '' },
    usualWeeks: '4',
    needsFilm: false,
    note: '',
  };
  const drill = {
    family: '',
    measure: 'hold',
    eachSide: true,
    eachIsLeg: false,
    secondsPerRep: '',
    share: '',
    helpingShare: '',
    shareSource: '',
    weights: { 'shoulder-overhead': '0.7' },
    equipment: ['bar'],
    camera: '',
  };
  expect(await send({ act: 'add-rung', above: null, rung, drill })).toEqual({ saved: true });
  expect((await opened(lead, ladderId)).ladder.rungs).toMatchObject([
    { name: 'Tucked', pass: { target: 5 } },
  ]);
});

test('a new name of a skill is followed by the goals of plans', async () => {
  const { clientId } = await makeTestClient(team);
  await plan(team, clientId, { version: 1, from: '2026-11-01', rungIds: [] });
  await ownerQuery(`update plan set skills_in_focus = '{Planche,Handstand}' where client_id = $1`, [
    clientId,
  ]);
  const planche = await skill('Planche');
  await edit({ act: 'rename', shelf: 'skill', id: planche?.id, was: 'Planche', name: 'Planche, all forms' });
  expect(
    await ownerQuery('select skills_in_focus as focus from plan where client_id = $1', [clientId]),
  ).toEqual([{ focus: ['Planche, all forms', 'Handstand'] }]);
  const rename = { act: 'rename', shelf: 'skill', id: planche?.id, name: 'Planches' };
  await expect(edit({ ...rename, was: 'Planche' })).rejects.toMatchObject({
    code: 'conflict',
    fields: { was: 'Planche, all forms' },
  });
  await expect(edit({ ...rename, was: 'Planche, all forms', name: 'handstand' })).rejects.toMatchObject({
    fields: { name: '"Handstand" is there already' },
  });
});

test('ladders of a part, parts and skills are put in order; an order of an older list is refused', async () => {
  const { skills, parts, ladders } = await outline();
  const ids = skills.map((one) => one.id);
  const turned = [ids[1] ?? '', ids[0] ?? '', ...ids.slice(2)];
  await edit({ act: 'order', shelf: 'skill', was: ids, order: turned });
  expect((await outline()).skills.map((one) => one.id)).toEqual(turned);
  await expect(edit({ act: 'order', shelf: 'skill', was: ids, order: ids })).rejects.toMatchObject({
    code: 'conflict',
  });
  await expect(
    edit({ act: 'order', shelf: 'skill', was: turned, order: turned.slice(1) }),
  ).rejects.toMatchObject({ code: 'invalid' });
  const own = parts.filter((part) => part.skillId === ids[1]).map((part) => part.id);
  await edit({ act: 'order', shelf: 'part', was: own, order: own.toReversed() });
  expect((await outline()).parts.filter((part) => part.skillId === ids[1]).map((part) => part.id)).toEqual(
    own.toReversed(),
  );
  const others = (list: typeof ladders) => list.filter((one) => one.partId !== ladders[0]?.partId);
  expect(others((await outline()).ladders)).toEqual(others(ladders));
});

test('a skill with ladders in use is not retired, an empty one is, and comes back', async () => {
  const handstand = await skill('Handstand');
  await expect(edit({ act: 'retire', shelf: 'skill', id: handstand?.id })).rejects.toMatchObject({
    code: 'invalid',
    fields: { id: expect.stringContaining('retire or move its ladders first') },
  });
  await edit({ act: 'add-skill', name: 'Empty' });
  const empty = await skill('Empty');
  await edit({ act: 'retire', shelf: 'skill', id: empty?.id });
  expect((await skill('Empty'))?.retired).toBe(true);
  await edit({ act: 'put-back', shelf: 'skill', id: empty?.id });
  expect((await skill('Empty'))?.retired).toBe(false);
  const [line] = await ownerQuery<{ action: string; fields: string[] }>(
    'select action, fields from audit where team_id = $1 and object_id = $2 order by at desc limit 1',
    [team.teamId, empty?.id],
  );
  expect(line).toEqual({ action: 'outline-changed', fields: ['put back'] });
});

test('nothing of another team can be renamed, retired or put in order', async () => {
  const stranger = leadOf(await makeTestTeam('Strangers'));
  const handstand = await skill('Handstand');
  const theirs = (change: unknown) => editOutline(stranger, outlineChange.parse(change), NOW);
  const id = handstand?.id;
  for (const change of [
    { act: 'rename', shelf: 'skill', id, was: 'Handstand', name: 'Taken' },
    { act: 'retire', shelf: 'skill', id },
  ])
    await expect(theirs(change)).rejects.toMatchObject({ code: 'not-found' });
  await expect(theirs({ act: 'add-part', skillId: id, name: 'Taken' })).rejects.toMatchObject({
    code: 'invalid',
  });
  await expect(theirs({ act: 'order', shelf: 'skill', was: [id], order: [id] })).rejects.toMatchObject({
    code: 'conflict',
  });
  expect((await skill('Handstand'))?.retired).toBe(false);
});
