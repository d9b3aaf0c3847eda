import { beforeEach, describe, expect, it } from 'vitest';
import { loadClientTeam } from '#lib/usecases/team/load-client-team.ts';
import { moveClients, readMove, undoMoves } from '#lib/usecases/team/move-clients.ts';
import { makeTestClient, makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';
import { addMemberTo, coachOf, giveTo, leadOf, type MemberActor } from './arrange.ts';

const NOW = new Date('2026-11-25T09:00:00.000Z');
let team: TestTeam;
let lead: MemberActor;
let ruth: MemberActor;
let clients: string[];
beforeEach(async () => {
  team = await makeTestTeam('Low Wall');
  lead = leadOf(team);
  ruth = await addMemberTo(team, 'coach', 'Ruth');
  clients = [];
  for (const name of ['Ana', 'Bo', 'Cem']) clients.push((await makeTestClient(team, { name })).clientId);
});
const moves = () =>
  ownerQuery('select client_id, from_id, to_id, by_id, note from client_move where team_id = $1', [
    team.teamId,
  ]);

describe('clients moved to another coach', () => {
  it('go with a note and a trace, several at once, and come back by undo', async () => {
    const made = await moveClients(
      lead,
      { clientIds: clients.slice(0, 2), toId: ruth.memberId, note: 'Both planche.' },
      NOW,
    );
    expect(await Promise.all(clients.map(coachOf))).toEqual([ruth.memberId, ruth.memberId, team.memberId]);
    expect(await moves()).toContainEqual({
      client_id: clients[0],
      from_id: team.memberId,
      to_id: ruth.memberId,
      by_id: team.memberId,
      note: 'Both planche.',
    });
    await undoMoves(lead, made.moveIds, NOW);
    expect(await Promise.all(clients.map(coachOf))).toEqual([team.memberId, team.memberId, team.memberId]);
    expect(await moves()).toEqual([]);
    await expect(undoMoves(lead, made.moveIds, NOW)).rejects.toMatchObject({ code: 'not-found' });
    const trail = await ownerQuery<{ action: string }>(
      'select action from audit where team_id = $1 and client_id = $2 order by at, action',
      [team.teamId, clients[0]],
    );
    expect(trail.map(({ action }) => action)).toEqual(['client-moved', 'move-undone']);
  });

  it('are not undone once they moved on', async () => {
    const [one = ''] = clients;
    const made = await moveClients(lead, { clientIds: [one], toId: ruth.memberId, note: '' }, NOW);
    await moveClients(ruth, { clientIds: [one], toId: team.memberId, note: '' }, NOW);
    await expect(undoMoves(lead, made.moveIds, NOW)).rejects.toThrow('Ana: moved again since');
  });

  it('are moved by the coach who has them or a lead, all or none', async () => {
    const [one = '', two = ''] = clients;
    await giveTo(one, ruth);
    await expect(
      moveClients(ruth, { clientIds: [one, two], toId: team.memberId, note: '' }, NOW),
    ).rejects.toThrow('Bo: only the coach who has them or a lead moves them.');
    expect(await coachOf(one)).toBe(ruth.memberId);
    await moveClients(ruth, { clientIds: [one], toId: team.memberId, note: '' }, NOW);
    expect(await coachOf(one)).toBe(team.memberId);
  });

  it('go to coaches of this team only', async () => {
    const assistant = await addMemberTo(team, 'assistant', 'Sol');
    const other = await makeTestTeam('Other');
    const to = (toId: string) => moveClients(lead, { clientIds: clients, toId, note: '' }, NOW);
    await expect(to(assistant.memberId)).rejects.toThrow('Sol is an assistant: choose a coach');
    await expect(to(other.memberId)).rejects.toMatchObject({ code: 'not-found' });
    await expect(to(team.memberId)).rejects.toThrow('has Ana, Bo, Cem already');
    const theirs = await makeTestClient(other);
    await expect(
      moveClients(lead, { clientIds: [theirs.clientId], toId: ruth.memberId, note: '' }, NOW),
    ).rejects.toMatchObject({ code: 'not-found' });
  });

  it('bring a note that the new coach alone marks as read', async () => {
    const made = await moveClients(
      lead,
      { clientIds: clients.slice(0, 1), toId: ruth.memberId, note: 'Knee.' },
      NOW,
    );
    const [moveId = ''] = made.moveIds;
    await expect(readMove(lead, moveId, NOW)).rejects.toMatchObject({ code: 'not-found' });
    const told = async (who: MemberActor) =>
      (await loadClientTeam(who, clients[0] ?? '', NOW))?.trace[0]?.words;
    expect(await told(lead)).toMatch(/“Knee\.”; not read yet$/);
    await readMove(ruth, moveId, NOW);
    expect(await told(lead)).toMatch(/“Knee\.”; read today$/);
    expect(await told(ruth)).toBe(await told(lead));
    await expect(readMove(ruth, moveId, NOW)).rejects.toMatchObject({ code: 'not-found' });
  });
});
