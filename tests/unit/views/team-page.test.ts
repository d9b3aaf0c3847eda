import { describe, expect, it } from 'vitest';
import { toBoard } from '#lib/views/board.ts';
import {
  boardTeamLines,
  coverInWords,
  coverLines,
  invitationLines,
  memberLines,
} from '#lib/views/team-page.ts';
import { aClient, anInput } from './board-fixture.ts';

const COVER = {
  id: 'c',
  memberId: 'ruth',
  name: 'Ruth',
  coveredById: 'ines',
  coveredBy: 'Ines',
  from: '2026-11-20',
  to: '2026-11-30',
  clients: 12,
};
const member = (id: string, name: string, today = '2026-11-25') => ({
  id,
  name,
  today,
  role: 'coach' as const,
  email: `${id}@wall.example`,
  zone: 'Europe/Lisbon',
  createdAt: new Date('2024-03-31T10:00:00Z'),
  clients: 3,
  leaves: [],
});

describe('cover', () => {
  it('stands beside both coaches while it lasts, by the day of each', () => {
    const said = (today: string) =>
      memberLines([member('ines', 'Ines', today), member('ruth', 'Ruth', today)], [COVER], 'ines').map(
        ({ cover }) => cover,
      );
    expect(said('2026-11-30')).toEqual([
      'covers for Ruth until Monday 30 November',
      'away until Monday 30 November, covered by Ines',
    ]);
    expect(said('2026-11-19')).toEqual(['', '']);
    expect(said('2026-12-01')).toEqual(['', '']);
  });

  it('is said in words, also of one day and one client', () => {
    expect(coverInWords(COVER)).toBe(
      'Ruth is away from Friday 20 November to Monday 30 November; Ines has the 12 clients',
    );
    expect(coverInWords({ ...COVER, to: COVER.from, clients: 1 })).toBe(
      'Ruth is away on Friday 20 November; Ines has the 1 client',
    );
  });
});

describe('the lines at the head of the board', () => {
  const lines = (over: Partial<Parameters<typeof boardTeamLines>[0]>, self: string | null) =>
    boardTeamLines({ covers: [], waiting: 0, own: 0, sentBack: 0, approves: true, ...over }, self).map(
      ({ words }) => words,
    );

  it('say to both who has whose clients', () => {
    expect(lines({ covers: [COVER] }, 'ines')).toEqual([
      'You have Ruth’s 12 clients too, until Monday 30 November.',
    ]);
    expect(lines({ covers: [COVER] }, 'ruth')).toEqual([
      'Ines has your 12 clients until Monday 30 November.',
    ]);
    expect(lines({ covers: [COVER] }, 'tove')).toEqual([]);
  });

  it('count what waits: all of it for a coach, own acts for an assistant', () => {
    expect(lines({ waiting: 3 }, 'ines')).toEqual(['3 acts wait for your approval']);
    expect(lines({ waiting: 1 }, 'ines')).toEqual(['1 act waits for your approval']);
    expect(lines({ waiting: 3, own: 1, sentBack: 2, approves: false }, 'sol')).toEqual([
      '1 act of yours waits for approval',
      '2 acts came back to you',
    ]);
    expect(lines({}, 'ines')).toEqual([]);
  });
});

describe('the board of a coach who covers', () => {
  it('counts the clients of the one who is away as one’s own', () => {
    const clients = [
      aClient({ id: 'a', coachId: 'ines' }),
      aClient({ id: 'b', coachId: 'ruth' }),
      aClient({ id: 'c', coachId: 'tove' }),
    ];
    const mine = (covered: string[]) => {
      const board = toBoard(anInput({ clients, covered, filter: { coach: 'ines' } }));
      return board.nothingNew.map(({ clientId }) => clientId);
    };
    expect(mine(['ruth'])).toEqual(['a', 'b']);
    expect(mine([])).toEqual(['a']);
  });
});

describe('an invitation', () => {
  const asked = (expires: string) =>
    invitationLines(
      [
        {
          id: 'i',
          email: 'sol@new.example',
          role: 'assistant',
          by: 'Ines',
          createdAt: new Date('2026-11-25T10:00:00Z'),
          expiresAt: new Date(expires),
        },
      ],
      new Date('2026-11-26T10:00:00Z'),
    )[0]?.words;

  it('says who, as what, asked by whom, and how long its link works', () => {
    expect(asked('2026-12-02T10:00:00Z')).toBe(
      'sol@new.example, as an assistant, asked by Ines on 25 Nov; the link works until 2 Dec',
    );
    expect(asked('2026-11-26T09:59:59Z')).toContain('the link is out of date since 26 Nov');
  });
});

describe('ending a cover', () => {
  it('is for a lead and for who is away', () => {
    const mayEnd = (self: string, leads: boolean) =>
      coverLines([COVER], { self, leads }).map((one) => one.mayEnd);
    expect([mayEnd('ruth', false), mayEnd('ines', false), mayEnd('tove', true)]).toEqual([
      [true],
      [false],
      [true],
    ]);
  });
});
