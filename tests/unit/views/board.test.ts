import { describe, expect, it } from 'vitest';
import { toBoard } from '#lib/views/board.ts';
import { drawRow } from '#lib/views/board-draw.ts';
import type { BoardInput, BoardReason, BoardView } from '#lib/views/board-types.ts';
import { timeWords } from '#lib/views/board-words.ts';
import { aClient, anInput, aQuestion, aReason, LAST_NIGHT, painHigh, TODAY } from './board-fixture.ts';

const names = (board: BoardView) => board.groups.flatMap((group) => group.rows.map((row) => row.name));
const rowOf = (board: BoardView, id: string) =>
  board.groups.flatMap((group) => group.rows).find((row) => row.clientId === id);

describe('rows', () => {
  it('puts everything owed to one client on one row, led by the most urgent', () => {
    const reasons = [
      aReason({ clientId: 'a' }),
      painHigh('a', { daysKnown: { known: 28, of: 28 } }),
      aReason({ clientId: 'a', kind: 'side-gap', points: 2, short: 'right lower, 9 of 11 pairs' }),
    ];
    const board = toBoard(anInput({ clients: [aClient({ id: 'a', name: 'Maren' })], reasons }));
    expect(names(board)).toEqual(['Maren']);
    const row = rowOf(board, 'a');
    expect(row?.tier).toBe('now');
    expect(row?.points).toBe(6);
    expect(row?.sentence).toEqual([
      { text: 'Right elbow ', heavy: false },
      { text: '6\u00a0of\u00a010', heavy: true },
      { text: ' on Tuesday, up from 2.', heavy: false },
    ]);
    expect(row?.others).toEqual(['toe pull 52 days', 'right lower, 9 of 11 pairs', '28 of 28 days known']);
    expect(row?.needsWords).toBe(true);
  });

  it('orders by tier, points, waiting, name, whatever the order of the input', () => {
    const clients = ['d', 'c', 'b', 'a'].map((id) => aClient({ id, name: id }));
    const reasons = [
      aReason({ clientId: 'a', kind: 'step-up-earned', tier: 'good-news', points: 0 }),
      aReason({ clientId: 'b', raisedAt: '2026-11-20T03:00:00.000Z' }),
      aReason({ clientId: 'c', raisedAt: '2026-11-22T03:00:00.000Z' }),
      painHigh('d'),
    ];
    const input = anInput({ clients, reasons });
    expect(names(toBoard(input))).toEqual(['d', 'b', 'c', 'a']);
    const turned = anInput({ clients: [...clients].reverse(), reasons: [...reasons].reverse() });
    expect(names(toBoard(turned))).toEqual(['d', 'b', 'c', 'a']);
  });

  it('never lowers a client for a further reason or for missing data', () => {
    const clients = [aClient({ id: 'a' }), aClient({ id: 'b' })];
    const base = [aReason({ clientId: 'a' }), aReason({ clientId: 'b' })];
    const place = (reasons: BoardReason[], over: Partial<BoardInput> = {}) =>
      toBoard(anInput({ clients, reasons, ...over }))
        .groups.flatMap((group) => group.rows.map((row) => row.clientId))
        .indexOf('b');
    const before = place(base);
    for (const more of [
      painHigh('b'),
      aReason({ clientId: 'b', kind: 'side-gap' }),
      aReason({ clientId: 'b', kind: 'step-up-earned', tier: 'good-news', points: 0 }),
    ]) {
      expect(place([...base, more])).toBeLessThanOrEqual(before);
    }
    const silent = clients.map((client) =>
      client.id === 'b' ? { ...client, dates: [], notChecked: 'not-reached' as const } : client,
    );
    expect(place(base, { clients: silent })).toBe(before);
  });

  it('says since when a reason stands, never a date to come', () => {
    const since = (date: string) =>
      rowOf(
        toBoard(
          anInput({ clients: [aClient({ id: 'a' })], reasons: [aReason({ clientId: 'a', since: date })] }),
        ),
        'a',
      )?.since.said;
    expect(since('2026-11-20')).toBe('Fri 20 Nov');
    expect(since('2026-11-29')).toBe('Sat 21 Nov');
  });

  it('keeps notes off the board', () => {
    const board = toBoard(
      anInput({
        clients: [aClient({ id: 'a' })],
        reasons: [aReason({ clientId: 'a', tier: null, level: 'note' })],
      }),
    );
    expect(board.groups).toEqual([]);
    expect(board.nothingNew).toHaveLength(1);
    const note = aReason({ clientId: 'a', kind: 'new-hardest', tier: null, level: 'note', short: 'a note' });
    const both = toBoard(anInput({ clients: [aClient({ id: 'a' })], reasons: [note, painHigh('a')] }));
    expect(rowOf(both, 'a')).toMatchObject({ kinds: ['pain-high'], others: [] });
  });

  it('forgets a "seen" once a later check-in has come', () => {
    const at = (time: string) => ({ date: '2026-11-24', time });
    const row = rowOf(
      toBoard(anInput({ clients: [aClient({ id: 'a' })], reasons: [aReason({ clientId: 'a' })] })),
      'a',
    );
    const seen = (time: string) =>
      row &&
      drawRow(row, {
        contact: { lastCheckIn: at('19:40'), seen: at(time) },
        days: undefined,
        today: TODAY,
        lastNight: LAST_NIGHT,
      }).seen;
    expect(seen('20:10')).toBe('seen Tue 20:10');
    expect(seen('19:39')).toBeNull();
  });
});

describe('counts', () => {
  const clients = ['a', 'b', 'c', 'd', 'e', 'f'].map((id) =>
    aClient({ id, name: id, notChecked: id === 'e' ? 'failed' : null }),
  );
  const reasons = [
    painHigh('a'),
    aReason({ clientId: 'b', state: 'aside', asideUntil: '2026-11-28' }),
    aReason({ clientId: 'c', state: 'with-client', withClientUntil: '2026-12-08' }),
    aReason({ clientId: 'c', state: 'aside' }),
    aReason({ clientId: 'f', kind: 'question-waiting', state: 'aside' }),
  ];
  const board = toBoard(
    anInput({
      clients: clients.map((one) =>
        one.id === 'f' ? { ...one, questions: [aQuestion({ stills: ['s'] })] } : one,
      ),
      reasons,
    }),
  );

  it('counts everybody once, and nobody not checked as nothing new', () => {
    const of = (list: { name: string }[]) => list.map((one) => one.name);
    expect(names(board)).toEqual(['a']);
    expect(of(board.aside)).toEqual(['b', 'f']);
    expect(of(board.withClient)).toEqual(['c']);
    expect(of(board.nothingNew)).toEqual(['d']);
    expect(of(board.notChecked)).toEqual(['e']);
    expect(of(board.questions)).toEqual(['f']);
    expect(board.withClient[0]?.words).toMatch(/^until Tue 8 Dec: Toe pull 3 x 20 s for 52 days/);
  });

  it('says the day, the counts and the time it takes', () => {
    expect(board.headline).toBe('Wednesday 25 November. One to answer now, none today.');
    expect([board.people, board.minutes]).toEqual([1, 10]);
    expect([70, 115, 120, 3_600].map(timeWords)).toEqual([
      'about 70 minutes',
      'about 115 minutes',
      'about 2 hours',
      'about 60 hours',
    ]);
  });
});

describe('filter', () => {
  const clients = [
    aClient({ id: 'a', name: 'João Pellerin' }),
    aClient({ id: 'b', name: 'Maren Oduya', coachId: 'coach-2' }),
  ];
  const reasons = [aReason({ clientId: 'a' }), painHigh('b')];
  const ofSkill = new Set(['b']);
  const under = (filter: BoardInput['filter']) => toBoard(anInput({ clients, reasons, filter, ofSkill }));

  it.each([
    [{ q: 'joao' }, ['João Pellerin']],
    [{ skill: 'Planche' }, ['Maren Oduya']],
    [{ reason: 'pain-high' as const }, ['Maren Oduya']],
    [{ group: 'this-week' as const }, ['João Pellerin']],
    [{ coach: 'coach-2' }, ['Maren Oduya']],
    [{}, ['Maren Oduya', 'João Pellerin']],
  ])('%j', (filter, expected) => {
    expect(names(under(filter))).toEqual(expected);
  });

  it('says how many it hides', () => {
    const board = under({ q: 'nobody' });
    expect([board.state, board.hidden]).toEqual(['filtered', 2]);
    expect(board.headline).toBe('Wednesday 25 November. One to answer now, none today.');
  });
});

describe('empty boards', () => {
  const clients = [aClient({ id: 'a' })];
  const night = anInput().night;
  it.each([
    ['no-clients', anInput()],
    ['nothing-new', anInput({ clients })],
    ['night-running', anInput({ clients, night: null })],
    ['night-running', anInput({ clients, night: night && { ...night, endedAt: null, done: 1 } })],
    ['nothing-new', anInput({ clients, night: night && { ...night, endedAt: null, done: 1, later: 2 } })],
    ['night-running', anInput({ clients, night: night && { ...night, late: true } })],
    ['night-failed', anInput({ clients, night: night && { ...night, done: 0, failed: 3 } })],
    ['filtered', anInput({ clients, reasons: [painHigh('a')], filter: { q: 'zzz' } })],
  ] as const)('%s', (state, input) => {
    expect(toBoard(input).state).toBe(state);
  });
});
