import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { HistoryRung } from '#lib/domain/history.ts';
import { bodiesOf } from '#lib/usecases/import/log/bodies-of.ts';
import { logAmounts } from '#lib/usecases/import/log/log-amounts.ts';
import { dateOrdersOf, logDate } from '#lib/usecases/import/log/log-date.ts';
import { logDrills } from '#lib/usecases/import/log/log-drills.ts';
import { type LogMapping, shapeLog } from '#lib/usecases/import/log/shape-log.ts';
import { readSheet } from '#lib/usecases/import/read-sheet.ts';
import { guessLogColumns } from '#lib/views/old-log/log-columns.ts';

const BOUNDS = { rows: 1000, bytes: 1024 * 1024, columns: 60 };
const LINE = '11111111-1111-4111-8111-111111111111';
const SIDE = '22222222-2222-4222-8222-222222222222';
const TRY = '33333333-3333-4333-8333-333333333333';
const rung = (id: string, name: string, over: Partial<HistoryRung>): HistoryRung =>
  ({ id, name, ladder: 'Wall', measure: 'hold', eachSide: false, ...over }) as HistoryRung;
const rungs = new Map(
  [
    rung(LINE, 'Chest to wall', {}),
    rung(SIDE, 'One arm lean', { measure: 'reps', eachSide: true }),
    rung(TRY, 'Kick up', { measure: 'made-tried' }),
  ].map((one) => [one.id, one]),
);
const DRILLS = [
  { word: 'wall line', rungId: LINE },
  { word: 'lean', rungId: SIDE },
  { word: 'kick ups', rungId: TRY },
  { word: 'bench', rungId: null },
];
const mappingOf = (columns: LogMapping['columns'], over: Partial<LogMapping> = {}): LogMapping => ({
  columns,
  dateOrder: 'year-first',
  drills: DRILLS,
  pain: null,
  ...over,
});
const shaped = (text: string, mapping: LogMapping) =>
  shapeLog(readSheet(text, BOUNDS), mapping, { rungs, today: '2026-11-25' });
const COLUMNS = ['date', 'drill', 'side', 'sets', 'value', 'effort', 'minutes', 'words'] as const;
const HEAD = 'date;drill;side;sets;value;rpe;min;notes\n';

describe('an old log', () => {
  it('becomes one day for each date, with its sets in order', () => {
    const { days, problems } = shaped(
      `${HEAD}2025-03-31;Wall line;;3;40 s;6;55;felt long\n2025-03-31;LEAN;left;;8/8/7;6;;\n` +
        '2025-03-31;lean;R;2;7;;;\n2025-03-30;kick-ups;;;7/10;;;\n2025-03-30;bench;;3;80;;;\n',
      mappingOf(COLUMNS),
    );
    expect(problems).toEqual([]);
    expect(days.map(({ date }) => date)).toEqual(['2025-03-30', '2025-03-31']);
    expect(days[0]).toMatchObject({ words: ['bench 3 80'], sets: [{ rungId: TRY, value: 7, tried: 10 }] });
    expect(days[1]).toMatchObject({ effort: 6, minutes: 55, words: ['felt long'], lines: [2, 3, 4] });
    expect(days[1]?.sets.map(({ side, value }) => `${side} ${value}`)).toEqual([
      ...Array(3).fill('both 40'),
      'left 8',
      'left 8',
      'left 7',
      'right 7',
      'right 7',
    ]);
  });

  it('goes through the rules of every check-in, and names the line of what they refuse', () => {
    const facts = {
      mapping: mappingOf(COLUMNS),
      zone: 'Europe/Oslo',
      rungs: [...rungs.values()],
      newId: () => LINE,
    };
    const { days } = shaped(
      `${HEAD}2025-03-31;Wall line;;;40;6;55;\n2025-03-31;Wall line;;;1:30;;;\n`,
      facts.mapping,
    );
    const { bodies } = bodiesOf(days, facts);
    expect(bodies).toMatchObject([
      {
        kind: 'training',
        effort: 6,
        sets: [
          { index: 1, value: 40, how: 'typed' },
          { index: 2, value: 90 },
        ],
      },
    ]);
    const long = shaped(
      `${HEAD}2025-03-31;Wall line;;;40;;;\n2025-03-31;Wall line;;;90 min;;;\n`,
      facts.mapping,
    );
    expect(bodiesOf(long.days, facts)).toMatchObject({
      bodies: [],
      problems: [{ line: 3, column: 'value', message: expect.stringContaining('more than 10 minutes') }],
    });
  });

  it.each([
    ['2026-02-30;wall line;;;40;;;', 2, 'no day that exists'],
    [';wall line;;;40;;;', 2, 'is empty'],
    ['2026-11-26;wall line;;;40;;;', 2, 'lies ahead'],
    ['2025-01-02;lean;;;8;;;', 2, 'say left or right'],
    ['2025-01-02;wall line;left;;8;;;', 2, 'both sides together'],
    ['2025-01-02;lean;west;;8;;;', 2, 'none of left, right, both'],
    ['2025-01-02;wall line;;2;10/8/8;;;', 2, 'that fits 2 sets'],
    ['2025-01-02;wall line;;;1e3;;;', 2, 'is not an amount'],
    ['2025-01-02;wall line;;;-5;;;', 2, 'is not an amount'],
    ['2025-01-02;wall line;;;1.000,5;;;', 2, 'is not an amount'],
    ['2025-01-02;kick ups;;;7;;;', 2, 'made of tried'],
    ['2025-01-02;wall line;;0;8;;;', 2, 'whole number 1 to 50'],
    ['2025-01-02;wall line;;;;;;', 2, 'what was done'],
    ['2025-01-02;;;;8;;;', 2, 'there is a result'],
    ['2025-01-02;new one;;;8;;;', 2, 'not among the drills'],
    ['2025-01-02;wall line;;;8;14;;', 2, 'whole number 0 to 10'],
    ['2025-01-02;wall line;;;8;6;;\n2025-01-02;wall line;;;8;7;;', 3, 'make them equal'],
  ])('says what is wrong with %j', (rows, line, message) => {
    const { problems } = shaped(`${HEAD}${rows}\n`, mappingOf(COLUMNS));
    expect(problems[0]).toMatchObject({ line, message: expect.stringContaining(message) });
  });

  it('reads both sides from two columns, and pain of one place as the highest of the day', () => {
    const mapping = mappingOf(['date', 'drill', 'left', 'right', 'pain'], {
      pain: { region: 'elbow-inner', side: 'left' },
    });
    const { days, problems } = shaped(
      'd,x,l,r,p\n2025-01-02,lean,8,"7, 6",2\n2025-01-02,lean,5,,4\n',
      mapping,
    );
    expect(problems).toEqual([]);
    expect(days[0]?.sets.map(({ side, value }) => `${side} ${value}`)).toEqual([
      'left 8',
      'right 7',
      'right 6',
      'left 5',
    ]);
    const facts = { mapping, zone: 'UTC', rungs: [...rungs.values()], newId: () => LINE };
    expect(bodiesOf(days, facts).bodies[0]?.pain).toEqual([
      { region: 'elbow-inner', side: 'left', moment: 'after', value: 4, kind: 'joint', usual: null },
    ]);
  });

  it('knows how dates are written only where one way fits all of them', () => {
    expect(dateOrdersOf(['03/04/2025', '05/06/2025'])).toEqual(['day-first', 'month-first']);
    expect(dateOrdersOf(['03/04/2025', '13/04/2025'])).toEqual(['day-first']);
    expect(dateOrdersOf(['2025-03-04T18:00:00'])).toEqual(['year-first']);
    expect(dateOrdersOf(['1.1.25', 'x'])).toEqual([]);
    expect(logDate('29.2.2028', 'day-first')).toBe('2028-02-29');
    expect(logDate('29.2.2027', 'day-first')).toBeUndefined();
    expect(logDate('0001-01-01', 'year-first')).toBeUndefined();
  });

  it('guesses columns and drills by their names, and never one of two', () => {
    expect(guessLogColumns(['Date', 'Exercise', 'Sets', 'Reps', 'Reps', 'Mood', 'RPE'])).toEqual([
      'date',
      'drill',
      'sets',
      'value',
      'leave',
      'leave',
      'effort',
    ]);
    const { rows } = readSheet('x\nChest to Wall\nchest to wall\nWall: Kick up\ntwin\n', BOUNDS);
    const twins = [...rungs.values(), rung('a', 'Twin', { ladder: 'A' }), rung('b', 'Twin', { ladder: 'B' })];
    expect(logDrills(rows, { drill: 0, value: -1 }, twins).map(({ word, rungId }) => [word, rungId])).toEqual(
      [
        ['Chest to Wall', LINE],
        ['Wall: Kick up', TRY],
        ['twin', null],
      ],
    );
  });

  it('reads odd cells without throwing, and amounts as they were written', () => {
    fc.assert(
      fc.property(fc.string(), fc.constantFrom('hold', 'reps', 'made-tried', 'range-up'), (cell, measure) => {
        const amounts = logAmounts(cell, measure);
        for (const { value } of amounts ?? []) expect(Number.isFinite(value)).toBe(true);
      }),
      { numRuns: 2000 },
    );
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 99 }), { minLength: 1, maxLength: 9 }), (values) => {
        expect(logAmounts(values.join('/'), 'reps')?.map(({ value }) => value)).toEqual(values);
      }),
    );
  });
});

describe('a sheet', () => {
  it('is read whatever ends its lines and parts its cells, or refused by name', () => {
    for (const end of ['\n', '\r\n', '\r'])
      expect(readSheet(`\uFEFFa\tb${end}1\t2${end}`, BOUNDS).rows).toMatchObject([{ cells: ['1', '2'] }]);
    expect(() => readSheet('a;b\n\uFFFD;1\n', BOUNDS)).toThrow('Save it as CSV in UTF-8');
    expect(() => readSheet(`${'a;'.repeat(70)}\n1\n`, BOUNDS)).toThrow('at most 60');
    expect(() => readSheet(`a\n${'1\n'.repeat(1001)}`, BOUNDS)).toThrow('at most 1000');
  });
});
