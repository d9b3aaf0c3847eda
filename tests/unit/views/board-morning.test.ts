import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Cut, toBoard } from '#lib/views/board.ts';
import { firstRows, rowsAfter } from '#lib/views/board-first-rows.ts';
import { newsWords, urgentWords } from '#lib/views/board-news-words.ts';
import { changesSince } from '#lib/views/board-print.ts';
import type { BoardInput, BoardReason, BoardView } from '#lib/views/board-types.ts';
import { gettingToKnowWords } from '#lib/views/getting-to-know.ts';
import { aClient, anInput, aQuestion, aReason, painHigh } from './board-fixture.ts';

const names = (board: BoardView) => board.groups.flatMap((group) => group.rows.map((row) => row.name));
const rowOf = (board: BoardView, id: string) =>
  board.groups.flatMap((group) => group.rows).find((row) => row.clientId === id);

describe('order', () => {
  // Many rows that are equal in everything but one thing, so that each rule of the order has work to do.
  const clients = Array.from({ length: 40 }, (_, index) =>
    aClient({ id: `c${index}`, name: `Name ${index % 5}`, questions: index % 9 === 0 ? [aQuestion()] : [] }),
  );
  const reasons = clients.flatMap(({ id }, index) => [
    aReason({ clientId: id, points: index % 2, raisedAt: `2026-11-2${index % 3}T03:00:00.000Z` }),
    ...(index % 4 === 0 ? [painHigh(id)] : []),
    ...(index % 6 === 0 ? [aReason({ clientId: id, kind: 'side-gap', points: 2 })] : []),
  ]);
  const said = (input: BoardInput) =>
    toBoard(input).groups.map((group) => [group.tier, group.rows.map((row) => [row.clientId, row.others])]);

  it('is the same a thousand times, however the input is shuffled', () => {
    const first = said(anInput({ clients, reasons }));
    fc.assert(
      fc.property(fc.shuffledSubarray(clients, { minLength: 40 }), (mixed) => {
        expect(said(anInput({ clients: mixed, reasons }))).toEqual(first);
      }),
      { numRuns: 500 },
    );
    fc.assert(
      fc.property(fc.shuffledSubarray(reasons, { minLength: reasons.length }), (mixed) => {
        const ids = (rows: ReturnType<typeof said>) =>
          rows.map(([tier, list]) => [tier, (list as [string, string[]][]).map(([id]) => id)]);
        expect(ids(said(anInput({ clients, reasons: mixed })))).toEqual(ids(first));
      }),
      { numRuns: 500 },
    );
  });
});

describe('everything owed', () => {
  const asks = aClient({ id: 'a', questions: [aQuestion(), aQuestion({ id: 'q2', text: 'And rings?' })] });

  it('has a row for a question that no check has raised yet, with nothing to take or close', () => {
    const row = rowOf(toBoard(anInput({ clients: [asks] })), 'a');
    expect(row).toMatchObject({ tier: 'this-week', points: 0, onlyQuestion: true, mayBeKnown: false });
    expect(row?.sentence.map((part) => part.text).join('')).toBe('Asks: “Bars or floor?”');
    expect(row?.questions.map((question) => question.id)).toEqual(['q', 'q2']);
  });

  it('says such a question beside other reasons, and brings a client back who was put aside', () => {
    const beside = rowOf(toBoard(anInput({ clients: [asks], reasons: [aReason({ clientId: 'a' })] })), 'a');
    expect(beside?.others).toEqual(['2 questions waiting']);
    const aside = toBoard(
      anInput({ clients: [asks], reasons: [aReason({ clientId: 'a', state: 'aside' })] }),
    );
    expect(names(aside)).toEqual(['Client a']);
    expect(aside.aside).toEqual([]);
  });

  it('shows every further reason, however many', () => {
    const kinds = [
      'side-gap',
      'plan-ending',
      'limit-ending',
      'asked-no-answer',
      'film-waiting',
      'not-seen',
    ] as const;
    const reasons = [painHigh('a'), ...kinds.map((kind) => aReason({ clientId: 'a', kind, short: kind }))];
    expect(
      rowOf(toBoard(anInput({ clients: [aClient({ id: 'a' })], reasons })), 'a')?.others.toSorted(),
    ).toEqual([...kinds].toSorted());
  });
});

describe('good news never hides bad', () => {
  const stepUp = aReason({
    clientId: 'a',
    kind: 'step-up-earned',
    tier: 'good-news',
    points: 0,
    short: 'step up',
  });
  const clients = [aClient({ id: 'a' })];

  it.each(['danger-sign', 'pain-high'] as const)('no step up beside %s', (kind) => {
    const row = rowOf(toBoard(anInput({ clients, reasons: [stepUp, painHigh('a', { kind })] })), 'a');
    expect(row).toMatchObject({ tier: 'now', kinds: [kind], others: [], earned: false });
  });

  it.each(['with-client', 'aside'] as const)('no step up while pain of 6 is %s: it is not over', (state) => {
    const held = painHigh('a', { state, withClientUntil: '2026-12-09', asideUntil: '2026-12-09' });
    const board = toBoard(anInput({ clients, reasons: [stepUp, held] }));
    expect(board.groups).toEqual([]);
    expect(state === 'aside' ? board.aside : board.withClient).toHaveLength(1);
  });

  it('is there again once the danger is closed, and beside lesser pain', () => {
    expect(rowOf(toBoard(anInput({ clients, reasons: [stepUp] })), 'a')).toMatchObject({
      tier: 'good-news',
      earned: true,
    });
    const rising = aReason({ clientId: 'a', kind: 'pain-rising' });
    expect(rowOf(toBoard(anInput({ clients, reasons: [stepUp, rising] })), 'a')?.kinds).toContain(
      'step-up-earned',
    );
  });
});

describe('known', () => {
  const clients = [aClient({ id: 'a', name: 'Ada' }), aClient({ id: 'b', name: 'Bo' })];
  const known = aReason({ clientId: 'a', points: 2, knownWords: 'waits for the new bars' });
  const other = aReason({ clientId: 'b' });

  it('folds to its words, comes last in its group and counts in no headline', () => {
    const board = toBoard(anInput({ clients, reasons: [known, other] }));
    expect(board.groups[0]?.rows.map((row) => [row.name, row.known])).toEqual([
      ['Bo', null],
      ['Ada', 'waits for the new bars'],
    ]);
    expect([board.people, board.headline]).toEqual([
      1,
      'Wednesday 25 November. Nothing to answer today, one this week.',
    ]);
  });

  it('unfolds when something new joins', () => {
    const joined = aReason({ clientId: 'a', kind: 'side-gap', short: 'left lower' });
    const asks = [aClient({ id: 'a', questions: [aQuestion()] })];
    expect(rowOf(toBoard(anInput({ clients, reasons: [known, joined] })), 'a')?.known).toBeNull();
    expect(rowOf(toBoard(anInput({ clients: asks, reasons: [known] })), 'a')?.known).toBeNull();
  });

  it.each([
    ['2026-11-23', true],
    ['2026-11-24', false],
    ['2026-11-25', false],
  ])('raised %s it may be folded: %s', (raisedOn, may) => {
    const row = rowOf(toBoard(anInput({ clients, reasons: [aReason({ clientId: 'b', raisedOn })] })), 'b');
    expect(row?.mayBeKnown).toBe(may);
  });

  it('is never offered for a danger sign or pain of 6 or more', () => {
    for (const kind of ['danger-sign', 'pain-high'] as const) {
      const row = rowOf(
        toBoard(anInput({ clients, reasons: [other, painHigh('b', { kind, raisedOn: '2026-11-01' })] })),
        'b',
      );
      expect(row?.mayBeKnown).toBe(false);
    }
  });
});

describe('getting to know', () => {
  const young = (id: string, days: number[]) =>
    aClient({ id, firstDay: '2026-11-10', dates: days.map((day) => `2026-11-${day}`) });

  it('folds clients in their first 28 days, with the days that are known', () => {
    const clients = [
      young('a', [11, 13, 16, 18, 20, 22, 24]),
      young('b', [20, 22]),
      young('c', []),
      aClient({ id: 'd', firstDay: '2026-10-27' }),
    ];
    const board = toBoard(anInput({ clients }));
    expect(board.gettingToKnowWords).toBe('Getting to know 3 clients: 14, 3 and 0 of 28 days');
    expect(board.gettingToKnow.map((one) => one.clientId)).toEqual(['a', 'b', 'c']);
    expect(board.nothingNew.map((one) => one.clientId)).toEqual(['d']);
  });

  it('leaves a new client whose checks say something on the board', () => {
    const board = toBoard(anInput({ clients: [young('a', [])], reasons: [painHigh('a')] }));
    expect([names(board), board.gettingToKnow]).toEqual([['Client a'], []]);
  });

  it.each([
    [[0, 0, 0], 'Getting to know 3 clients: 0 of 28 days'],
    [[5], 'Getting to know 1 client: 5 of 28 days'],
    [[0, 1, 2, 3, 4, 5, 26], 'Getting to know 7 clients: 0 to 26 of 28 days'],
  ])('%j', (days, words) => {
    expect(gettingToKnowWords(days)).toBe(words);
  });
});

describe('what changed while the page is open', () => {
  const clients = ['a', 'b', 'c'].map((id) => aClient({ id: `${id}`.repeat(8) }));
  const [a = '', b = '', c = ''] = clients.map((client) => client.id);
  const before = toBoard(anInput({ clients, reasons: [aReason({ clientId: a }), aReason({ clientId: b })] }));
  const rowsOf = (reasons: BoardReason[]) =>
    toBoard(anInput({ clients, reasons })).groups.flatMap((group) => group.rows);
  const words = (reasons: BoardReason[], actedOn: string[] = []) => {
    const changes = changesSince(before.prints, rowsOf(reasons), new Set(actedOn));
    return [newsWords(changes), urgentWords(changes)];
  };
  const same = [aReason({ clientId: a }), aReason({ clientId: b })];

  it('is nothing where rows say the same', () => {
    expect(words(same)).toEqual(['', '']);
  });

  it('tells changed, new and gone apart, and says who is urgent', () => {
    expect(words([...same, painHigh(c)])).toEqual(['1 new', 'To answer now: Client cccccccc.']);
    expect(words([aReason({ clientId: a }), painHigh(b)])).toEqual([
      '1 row changed',
      'To answer now: Client bbbbbbbb.',
    ]);
    expect(words([aReason({ clientId: a })])).toEqual(['1 gone', '']);
    expect(words([aReason({ clientId: a, sentence: 'Other.' }), aReason({ clientId: c })])).toEqual([
      '1 row changed, 1 new, 1 gone',
      '',
    ]);
  });

  it('leaves out what was done on this page', () => {
    expect(words([aReason({ clientId: a })], [b])).toEqual(['', '']);
    expect(words([...same, aReason({ clientId: b, kind: 'side-gap' })], [b])).toEqual(['', '']);
  });
});

describe('rows that come with the page', () => {
  const clients = Array.from({ length: 30 }, (_, index) =>
    aClient({ id: `c${String(index).padStart(2, '0')}` }),
  );
  const reasons = clients.map(({ id }) => aReason({ clientId: id }));
  const most = { now: 10, today: 10, 'this-week': 10, 'good-news': 10 };
  const cutBy = (cut?: Cut) => toBoard(anInput({ clients, reasons }), cut).groups[0];
  const idsOf = (cut?: Cut) => cutBy(cut)?.rows.map((row) => row.clientId) ?? [];

  it('are the first of each group, and the rest follows behind the last of them without a gap', () => {
    const first = cutBy(firstRows(most, 20));
    expect([first?.rows.length, first?.more, first?.count]).toEqual([10, 20, 30]);
    const last = first?.rows.at(-1)?.clientId;
    const next = idsOf(rowsAfter('this-week', last, 12));
    const rest = idsOf(rowsAfter('this-week', next.at(-1), 12));
    expect([...idsOf(firstRows(most, 20)), ...next, ...rest]).toEqual(idsOf());
    expect(cutBy(rowsAfter('this-week', next.at(-1), 12))?.more).toBe(0);
    expect(idsOf(rowsAfter('this-week', 'somebody who left', 30))).toEqual(idsOf());
  });

  it('are all of them on a short board', () => {
    expect(cutBy(firstRows(most, 30))?.more).toBe(0);
    expect(cutBy(firstRows(most, 29))?.more).toBe(20);
  });

  it('are all of them where two more are left', () => {
    expect(cutBy(firstRows({ ...most, 'this-week': 28 }, 20))?.more).toBe(0);
    expect(cutBy(firstRows({ ...most, 'this-week': 27 }, 20))?.more).toBe(3);
  });
});
