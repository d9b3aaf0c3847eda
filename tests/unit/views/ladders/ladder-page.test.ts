import { describe, expect, it } from 'vitest';
import { ladderList, partChoices } from '#lib/views/ladders/ladder-list.ts';
import { ladderPage } from '#lib/views/ladders/ladder-page.ts';
import { movedTo } from '#lib/views/ladders/moved-to.ts';
import { ladderOf, rungOf } from '#tests/unit/planning/ladders/ladder-builders.ts';

describe('the page of a ladder', () => {
  it('stands with the hardest on top, retired ones apart, and who is where', () => {
    const state = ladderOf([
      rungOf('a'),
      rungOf('x', { retired: true }),
      rungOf('b', { needsFilm: true, usualWeeks: 1 }),
    ]);
    const page = ladderPage(state, [
      {
        clientId: '1',
        name: 'Asha',
        standsOn: [{ rungId: 'a', side: 'left' }],
        planned: [{ rungId: 'b', side: 'left' }],
        assessed: false,
        limits: [],
      },
      {
        clientId: '2',
        name: 'Bela',
        standsOn: [
          { rungId: 'a', side: 'left' },
          { rungId: 'a', side: 'right' },
        ],
        planned: [{ rungId: 'a', side: 'both' }],
        assessed: false,
        limits: [],
      },
      {
        clientId: '3',
        name: 'Cyra',
        standsOn: [{ rungId: 'x', side: 'both' }],
        planned: [],
        assessed: false,
        limits: [],
      },
    ]);
    expect(page.rungs.map((rung) => [rung.number, rung.id])).toEqual([
      [2, 'b'],
      [1, 'a'],
    ]);
    expect(page.rungs.map((rung) => rung.stands.map((one) => one.words))).toEqual([
      [],
      ['Asha, left', 'Bela'],
    ]);
    expect(page.rungs.map((rung) => rung.planned.map((one) => one.words))).toEqual([['Asha, left'], []]);
    expect(page.rungs[0]).toMatchObject({
      mark: '4 × 10 s on 2 days',
      asks: 'with a film, usually 1 week',
      drill: '100 % of body weight; wrist bent back 0.9; shoulder forward 0.62',
      kit: 'hard floor',
    });
    expect(page.retired.map((rung) => rung.stands.map((one) => one.words))).toEqual([['Cyra']]);
    expect(page.people).toBe('3 clients stand on it');
    expect(ladderPage(state, []).people).toBe('nobody stands on it');
  });
});

describe('the list of ladders', () => {
  const row = (id: string, retired = false) => ({ id, name: id, retired });
  const outline = {
    skills: [row('Handstand'), row('Old', true)],
    parts: [
      { ...row('Free hold'), skillId: 'Handstand' },
      { ...row('Gone', true), skillId: 'Handstand' },
      { ...row('Other'), skillId: 'Old' },
    ],
    ladders: [
      { ...row('Hold'), partId: 'Free hold', family: 'balance' as const, rungs: 1 },
      { ...row('Held', true), partId: 'Free hold', family: 'balance' as const, rungs: 2 },
    ],
  };

  it('has shelves of what is in use, and what is retired apart', () => {
    const list = ladderList(outline, new Map([['Hold', 1]]));
    expect(list).toMatchObject({ ladders: 1, retiredSkills: [{ id: 'Old' }] });
    expect(list.skills).toHaveLength(1);
    expect(list.skills[0]).toMatchObject({
      parts: [
        {
          id: 'Free hold',
          ladders: [{ id: 'Hold', rungs: '1 rung', people: '1 client' }],
          retiredLadders: [{ id: 'Held', rungs: '2 rungs', people: 'nobody' }],
        },
      ],
      retiredParts: [{ id: 'Gone' }],
    });
  });

  it('offers parts in use of skills in use', () => {
    expect(partChoices(outline)).toEqual([{ id: 'Free hold', label: 'Handstand: Free hold' }]);
  });
});

describe('moving one of a list', () => {
  const items = ['a', 'b', 'c', 'd'].map((id) => ({ id }));
  const moved = (id: string, to: number) =>
    movedTo(items, id, to)
      .map((item) => item.id)
      .join('');

  it('puts it at the place, with the ends as limits', () => {
    expect([moved('a', 2), moved('d', 0), moved('b', 99), moved('c', -5)]).toEqual([
      'bcad',
      'dabc',
      'acdb',
      'cabd',
    ]);
  });

  it('is the same list where nothing moves', () => {
    expect(movedTo(items, 'a', 0)).toBe(items);
    expect(movedTo(items, 'd', 9)).toBe(items);
    expect(movedTo(items, 'nobody', 1)).toBe(items);
    expect(movedTo([], 'a', 0)).toEqual([]);
  });
});
