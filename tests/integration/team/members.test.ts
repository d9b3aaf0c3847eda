import { beforeEach, describe, expect, it } from 'vitest';
import { actorOf } from '#lib/auth/actor.ts';
import { changeRole } from '#lib/usecases/team/change-role.ts';
import { endMembership, resumeMembership } from '#lib/usecases/team/end-membership.ts';
import { giveLeave } from '#lib/usecases/team/give-leave.ts';
import { loadTeam } from '#lib/usecases/team/load-team.ts';
import { makeTestClient, makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';
import { cookieFor } from '../support/signing-in.ts';
import { addMemberTo, auditOf, coachOf, giveTo, leadOf, type MemberActor } from './arrange.ts';

const NOW = new Date('2026-11-25T09:00:00.000Z');
let team: TestTeam;
let lead: MemberActor;
let coach: MemberActor;
beforeEach(async () => {
  team = await makeTestTeam('Low Wall');
  lead = leadOf(team);
  coach = await addMemberTo(team, 'coach', 'Ruth');
});

describe('roles', () => {
  it('change, with the one before as the way back', async () => {
    expect(await changeRole(lead, { memberId: coach.memberId, role: 'lead' }, NOW)).toEqual({
      before: 'coach',
    });
    expect(await changeRole(lead, { memberId: team.memberId, role: 'coach' }, NOW)).toEqual({
      before: 'lead',
    });
    expect(await auditOf(team)).toEqual(['role-changed', 'role-changed']);
  });

  it('leave the team a lead, also when two step down at once', async () => {
    await expect(changeRole(lead, { memberId: team.memberId, role: 'coach' }, NOW)).rejects.toThrow(
      'a team needs a lead',
    );
    await changeRole(lead, { memberId: coach.memberId, role: 'lead' }, NOW);
    const both = await Promise.allSettled([
      changeRole(lead, { memberId: team.memberId, role: 'coach' }, NOW),
      changeRole(lead, { memberId: coach.memberId, role: 'coach' }, NOW),
    ]);
    expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    const leads = (await loadTeam(lead, NOW)).members.filter(({ role }) => role === 'lead');
    expect(leads).toHaveLength(1);
  });

  it('of an assistant are not given to somebody with clients', async () => {
    await giveTo((await makeTestClient(team)).clientId, coach);
    await expect(changeRole(lead, { memberId: coach.memberId, role: 'assistant' }, NOW)).rejects.toThrow(
      'an assistant has no clients: move those of Ruth (1) to a coach first',
    );
  });

  it('of another team are not there', async () => {
    const other = await makeTestTeam('Other');
    await expect(
      changeRole(leadOf(other), { memberId: coach.memberId, role: 'lead' }, NOW),
    ).rejects.toMatchObject({ code: 'not-found' });
  });
});

describe('leave for kinds of act', () => {
  it('is kept for an assistant, and goes with the role', async () => {
    const assistant = await addMemberTo(team, 'assistant', 'Sol');
    await giveLeave(lead, { memberId: assistant.memberId, acts: ['answer', 'plan'] }, NOW);
    const found = async () =>
      (await loadTeam(lead, NOW)).members.find(({ id }) => id === assistant.memberId)?.leaves;
    expect(await found()).toEqual(['answer', 'plan']);
    expect(await giveLeave(lead, { memberId: assistant.memberId, acts: ['step'] }, NOW)).toEqual({
      before: ['answer', 'plan'],
    });
    await changeRole(lead, { memberId: assistant.memberId, role: 'coach' }, NOW);
    expect(await found()).toEqual([]);
    await expect(giveLeave(lead, { memberId: coach.memberId, acts: ['step'] }, NOW)).rejects.toThrow(
      'only an assistant needs leave',
    );
  });
});

describe('a member who leaves', () => {
  it('moves the clients in the same act and is signed out at once', async () => {
    const { clientId } = await makeTestClient(team);
    await giveTo(clientId, coach);
    const headers = new Headers({ cookie: await cookieFor(coach.userId) });
    expect((await actorOf(headers))?.memberId).toBe(coach.memberId);
    await expect(
      endMembership(lead, { memberId: coach.memberId, clientsTo: null, note: '' }, NOW),
    ).rejects.toThrow('say who takes the clients of Ruth (1)');
    expect((await actorOf(headers))?.memberId).toBe(coach.memberId);

    const { moveIds } = await endMembership(
      lead,
      { memberId: coach.memberId, clientsTo: team.memberId, note: 'Ruth stops.' },
      NOW,
    );
    expect(await coachOf(clientId)).toBe(team.memberId);
    expect(await actorOf(headers)).toBeNull();
    expect(await ownerQuery('select 1 from session where user_id = $1', [coach.userId])).toEqual([]);
    expect((await loadTeam(lead, NOW)).members.map(({ id }) => id)).toEqual([team.memberId]);

    await resumeMembership(lead, { memberId: coach.memberId, moveIds }, NOW);
    expect(await coachOf(clientId)).toBe(coach.memberId);
    expect((await loadTeam(lead, NOW)).members).toHaveLength(2);
    expect((await auditOf(team)).filter((action) => action.startsWith('member'))).toEqual([
      'member-left',
      'member-returned',
    ]);
  });

  it('is never the last lead', async () => {
    await expect(
      endMembership(lead, { memberId: team.memberId, clientsTo: coach.memberId, note: '' }, NOW),
    ).rejects.toThrow('a team needs a lead');
  });
});
