import { expect, test } from 'vitest';
import type { RecordAssessed } from '#lib/domain/record.ts';
import { assessmentsOfRecord } from '#lib/handover/assessments-of-record.ts';
import { readHistory } from '#lib/handover/read-history.ts';
import { sampleHistory } from '#tests/fixtures/sample-history.ts';

const row = (over: Partial<RecordAssessed> = {}): RecordAssessed => ({
  id: 'first',
  date: '2026-11-25',
  savedAt: '2026-11-25T07:00:00.000Z',
  by: 'Ines',
  skill: 'Handstand',
  aim: 'Free, 30 s',
  kit: [],
  partAt: 1,
  part: 'Balance',
  ladder: 'Toe pull',
  asked: 'Toe pull 3',
  side: 'left',
  film: 'steady',
  rung: 'Toe pull 2',
  measure: 'range-up',
  sets: 3,
  value: 8,
  clean: true,
  pain: 0,
  ...over,
});

test('rows come together by assessment, part and side, in their order', () => {
  const rows = [
    row(),
    row({ side: 'right', measure: null, rung: null }),
    row({ partAt: 2, part: 'Line', side: 'both', measure: 'range-down' }),
    row({ id: 'second', part: 'Line', side: 'both', measure: 'made-tried' }),
  ];
  const read = assessmentsOfRecord(rows).map(({ id, parts }) => [
    id,
    parts.map(({ part, sides }) => [part, ...sides.map(({ side, unit }) => `${side} ${unit}`)]),
  ]);
  expect(read).toEqual([
    [
      'first',
      [
        ['Balance', 'left degrees', 'right null'],
        ['Line', 'both cm'],
      ],
    ],
    ['second', [['Line', 'both made']]],
  ]);
});

test('a history is read with assessments and without; a wrong one is refused by its path', () => {
  const bytes = (assessments?: unknown) =>
    Buffer.from(JSON.stringify({ ...sampleHistory(), ...(assessments !== undefined && { assessments }) }));
  const made = assessmentsOfRecord([row()]);
  expect(readHistory(bytes(), 'old.json').assessments).toBeUndefined();
  expect(readHistory(bytes(made), 'new.json').assessments).toEqual(made);
  const wrong = assessmentsOfRecord([row({ pain: 11 })]);
  expect(() => readHistory(bytes(wrong), 'new.json')).toThrow(/assessments\.0\.parts\.0\.sides\.0\.pain/);
});
