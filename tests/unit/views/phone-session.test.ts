import { describe, expect, test } from 'vitest';
import type { HistoryCheckIn, HistorySet } from '#lib/domain/history.ts';
import { doseInWords, phoneSession, setsInWords } from '#lib/views/phone-session.ts';

type Item = Parameters<typeof phoneSession>[0]['items'][number];
function anItem(changes: Partial<Item> = {}): Item {
  return {
    id: 'i1',
    rungId: 'r1',
    rung: 'Heel pull, back to wall',
    ladderId: 'l1',
    ladder: 'Heel pull',
    measure: 'hold',
    eachSide: false,
    faults: [],
    passTarget: 20,
    passTries: null,
    side: 'both',
    sets: 2,
    target: 30,
    minutes: null,
    support: null,
    stopRule: '',
    ...changes,
  };
}
function aSession(...items: Item[]) {
  return { label: 'A', minutes: 60, warmUp: '', items };
}
function aSet(changes: Partial<HistorySet>): HistorySet {
  return {
    rungId: 'r1',
    side: 'both',
    index: 1,
    planned: 30,
    value: 30,
    tried: null,
    how: 'typed',
    clean: true,
    faults: [],
    support: null,
    addedKg: null,
    ...changes,
  };
}
function aCheckIn(date: string, sets: HistorySet[]): HistoryCheckIn {
  return {
    id: date,
    date,
    zone: 'UTC',
    sentAt: `${date}T18:00:00.000Z`,
    kind: 'training',
    session: 'A',
    effort: 6,
    minutes: 60,
    ground: null,
    sleepHours: null,
    nothingHurts: true,
    sets,
    pain: [],
    dangerSigns: [],
    words: '',
  };
}

describe('a planned session on the phone', () => {
  test('one drill for both hands, beside it the last time', () => {
    const recent = [
      aCheckIn('2026-11-22', [aSet({ index: 2, value: 28 }), aSet({ index: 1 })]),
      aCheckIn('2026-11-20', [aSet({ value: 9 })]),
    ];
    const [drill] = phoneSession(aSession(anItem()), recent).drills;
    expect(drill).toMatchObject({
      title: 'Heel pull, back to wall',
      last: { date: '2026-11-22', lines: ['30, 28 s'] },
    });
    expect(drill?.sides).toMatchObject([{ side: 'both', sets: 2, target: 30, dose: '2 × 30 s' }]);
  });

  test('a drill planned for each side has a left and a right', () => {
    const [drill] = phoneSession(aSession(anItem({ eachSide: true })), []).drills;
    expect(drill?.sides.map((side) => side.side)).toEqual(['left', 'right']);
    expect(drill?.last).toBeNull();
  });

  test('left and right of one ladder on different rungs are one drill with named sides', () => {
    const right = anItem({ id: 'i1', rungId: 'r2', rung: 'two fingers', side: 'right', target: 15 });
    const left = anItem({ id: 'i2', rungId: 'r3', rung: 'one finger', side: 'left', target: 8 });
    const { drills } = phoneSession(aSession(right, left), []);
    expect(drills).toHaveLength(1);
    expect(drills[0]).toMatchObject({
      rungsDiffer: true,
      sides: [
        { side: 'left', target: 8 },
        { side: 'right', target: 15 },
      ],
    });
  });

  test('two rungs of one ladder for both hands stay two drills', () => {
    const { drills } = phoneSession(aSession(anItem(), anItem({ id: 'i2', rungId: 'r2' })), []);
    expect(drills).toHaveLength(2);
  });

  test('practice by minutes asks the pass mark of a set and says the minutes', () => {
    const [drill] = phoneSession(aSession(anItem({ target: null, minutes: 10, sets: 1 })), []).drills;
    expect(drill).toMatchObject({ note: 'about 10 min', sides: [{ target: 20, sets: 1 }] });
  });
});

test('a note that every drill has alike is said once', () => {
  const alike = phoneSession(
    aSession(anItem({ stopRule: 'slow' }), anItem({ id: 'i2', rungId: 'r2', stopRule: 'slow' })),
    [],
  );
  expect([alike.note, ...alike.drills.map((drill) => drill.note)]).toEqual(['slow', '', '']);
  const apart = phoneSession(
    aSession(anItem({ stopRule: 'slow' }), anItem({ id: 'i2', rungId: 'r2', stopRule: 'fast' })),
    [],
  );
  expect([apart.note, ...apart.drills.map((drill) => drill.note)]).toEqual(['', 'slow', 'fast']);
});

test('sets in words', () => {
  expect(setsInWords([aSet({ index: 1, value: 8 }), aSet({ index: 2, value: null })], 's')).toBe('8, – s');
  expect(
    setsInWords(
      [1, 2, 3].map((index) => aSet({ index, value: 60 })),
      's',
    ),
  ).toBe('3 × 60 s');
  expect(setsInWords([aSet({ value: 7, tried: 10 })], '')).toBe('7/10');
});

test('doses in words', () => {
  expect(doseInWords({ sets: 4, target: 8, tries: null, unit: 's' })).toBe('4 × 8 s');
  expect(doseInWords({ sets: 1, target: 8, tries: 10, unit: '' })).toBe('8 of 10');
});

test('the rest between sets goes to the phone as a number too; a line of no sets was not planned', () => {
  const session = phoneSession({ ...aSession(anItem({ sets: 0 })), restSeconds: 90 }, []);
  expect(session.restSeconds).toBe(90);
  expect(session.drills[0]?.sides[0]?.dose).toBe('not planned');
  expect(phoneSession(aSession(anItem()), []).restSeconds).toBeNull();
});
