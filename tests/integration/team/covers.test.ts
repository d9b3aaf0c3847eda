import { beforeEach, describe, expect, it } from 'vitest';
import { loadTeam } from '#lib/usecases/team/load-team.ts';
import { setCover, stopCover } from '#lib/usecases/team/set-cover.ts';
import { makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';
import { addMemberTo, leadOf, type MemberActor } from './arrange.ts';

const NOW = new Date('2026-11-25T09:00:00.000Z');
let team: TestTeam;
let lead: MemberActor;
let ruth: MemberActor;
let tove: MemberActor;
beforeEach(async () => {
  team = await makeTestTeam('Low Wall');
  lead = leadOf(team);
  ruth = await addMemberTo(team, 'coach', 'Ruth');
  tove = await addMemberTo(team, 'coach', 'Tove');
});
const cover = (who: MemberActor, by: MemberActor, from: string, to: string, actor = lead) =>
  setCover(actor, { memberId: who.memberId, coveredById: by.memberId, from, to }, NOW);

describe('a cover', () => {
  it('is said of oneself by a coach, of anybody by a lead', async () => {
    await cover(ruth, tove, '2026-12-01', '2026-12-10', ruth);
    await expect(cover(tove, lead, '2026-12-20', '2026-12-22', ruth)).rejects.toMatchObject({
      code: 'forbidden',
    });
    expect((await loadTeam(ruth, NOW)).covers).toMatchObject([
      { name: 'Ruth', coveredBy: 'Tove', from: '2026-12-01', to: '2026-12-10' },
    ]);
  });

  it.each([
    ['twice on one day', () => cover(ruth, lead, '2026-12-10', '2026-12-12'), 'Ruth is covered by Tove from'],
    ['by who is away then', () => cover(lead, ruth, '2026-12-05', '2026-12-06'), 'Ruth is away from'],
    ['of who covers then', () => cover(tove, lead, '2026-12-01', '2026-12-01'), 'Tove covers for Ruth'],
    ['in the past', () => cover(lead, tove, '2026-11-01', '2026-11-24'), 'is over already'],
    ['for over a year', () => cover(lead, tove, '2027-01-01', '2028-02-01'), 'more than a year'],
  ])('is refused %s', async (_, wrong, words) => {
    await cover(ruth, tove, '2026-12-01', '2026-12-10');
    await expect(wrong()).rejects.toThrow(words);
    expect((await loadTeam(lead, NOW)).covers).toHaveLength(1);
  });

  it('by an assistant is refused', async () => {
    const sol = await addMemberTo(team, 'assistant', 'Sol');
    await expect(cover(ruth, sol, '2026-12-01', '2026-12-02')).rejects.toThrow('Sol is an assistant');
  });

  it('next to another one is fine', async () => {
    await cover(ruth, tove, '2026-12-01', '2026-12-10');
    await cover(ruth, lead, '2026-12-11', '2026-12-12');
    await cover(tove, ruth, '2026-12-13', '2026-12-14');
    expect((await loadTeam(lead, NOW)).covers).toHaveLength(3);
  });

  it('that began ends with yesterday, one to come is taken away', async () => {
    const began = await cover(ruth, tove, '2026-11-20', '2026-12-10');
    await stopCover(ruth, began.coverId, NOW);
    expect((await loadTeam(lead, NOW)).covers).toEqual([]);
    const kept = await ownerQuery('select to_date::text as to from cover where team_id = $1', [team.teamId]);
    expect(kept).toEqual([{ to: '2026-11-24' }]);
    const ahead = await cover(lead, tove, '2026-12-20', '2026-12-22');
    await expect(stopCover(tove, ahead.coverId, NOW)).rejects.toMatchObject({ code: 'forbidden' });
    const { was } = await stopCover(lead, ahead.coverId, NOW);
    expect(was).toMatchObject({ from: '2026-12-20', to: '2026-12-22', coveredById: tove.memberId });
    expect((await loadTeam(lead, NOW)).covers).toEqual([]);
  });
});
