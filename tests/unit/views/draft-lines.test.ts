import { expect, test } from 'vitest';
import { draftView, takeLine } from '#lib/views/draft-lines.ts';
import type { PlanDraftLine } from '#lib/views/plan-draft.ts';
import type { FormLadder } from '#lib/views/plan-form.ts';
import { emptyRow, type FormRow } from '#lib/views/plan-rows.ts';

const rung = (id: string) => ({
  id,
  name: id,
  label: id,
  unit: 's',
  eachSide: true,
  passSets: 3,
  passTarget: 10,
  kit: [],
});
const ladder = (id: string, ...rungs: string[]): FormLadder => ({
  id,
  name: id,
  skill: 'One-arm handstand',
  part: 'Balance',
  family: 'balance',
  rungs: rungs.map(rung),
});
const ladders = [ladder('one-arm', 'two fingers', 'one finger'), ladder('lean', 'slow lean')];
const row = (key: number, rungId: string, over: Partial<FormRow> = {}): FormRow => ({
  ...emptyRow(key, 'A'),
  ladderId: 'one-arm',
  rungId,
  sets: '4',
  target: '10',
  stopRule: 'stop when it turns',
  ...over,
});
const line = (rungId: string, over: Partial<PlanDraftLine> = {}): PlanDraftLine => ({
  act: 'put',
  session: 'A',
  rungId,
  side: 'both',
  sets: 5,
  target: 6,
  minutes: null,
  timesPerWeek: 2,
  why: '',
  ...over,
});
const seen = (rows: FormRow[]) => rows.map(({ key, rungId, side, sets }) => [key, rungId, side, sets]);

test('a rung of the same ladder takes the place of the row and keeps what else it says', () => {
  const { rows, key } = takeLine([row(3, 'two fingers')], line('one finger'), ladders);
  expect(seen(rows)).toEqual([[3, 'one finger', 'both', '5']]);
  expect(rows[0]).toMatchObject({ target: '6', timesPerWeek: '2', stopRule: 'stop when it turns' });
  expect(key).toBe(3);
});

test('one side back parts a row of both; the other side stays as it was', () => {
  const right = line('two fingers', { side: 'right', sets: 3 });
  const { rows, key } = takeLine([row(3, 'one finger'), row(4, 'slow lean')], right, ladders);
  expect(seen(rows)).toEqual([
    [3, 'one finger', 'left', '4'],
    [5, 'two fingers', 'right', '3'],
    [4, 'slow lean', 'both', '4'],
  ]);
  expect(key).toBe(5);
});

test('a line for both takes the place of left and right', () => {
  const apart = [row(1, 'two fingers', { side: 'left' }), row(2, 'one finger', { side: 'right' })];
  expect(seen(takeLine(apart, line('two fingers'), ladders).rows)).toEqual([[1, 'two fingers', 'both', '5']]);
});

test('what has no row yet is added, into an empty row first', () => {
  const added = takeLine([row(1, 'one finger')], line('slow lean'), ladders);
  expect(seen(added.rows)).toEqual([
    [1, 'one finger', 'both', '4'],
    [2, 'slow lean', 'both', '5'],
  ]);
  expect(seen(takeLine([emptyRow(0, 'A')], line('slow lean'), ladders).rows)).toEqual([
    [0, 'slow lean', 'both', '5'],
  ]);
});

test('both rungs of a pyramid are taken beside each other, in either order', () => {
  const easier = line('two fingers', { sets: 3, replaces: 'two fingers', pairedWith: 'one finger' });
  const harder = line('one finger', { replaces: null, pairedWith: 'two fingers' });
  const before = [row(1, 'two fingers'), row(2, 'slow lean', { ladderId: 'lean' })];
  for (const order of [
    [easier, harder],
    [harder, easier],
  ]) {
    const rows = order.reduce<FormRow[]>((all, one) => takeLine(all, one, ladders).rows, before);
    expect(rows.every(({ stopRule }) => stopRule === 'stop when it turns')).toBe(true);
    expect(rows.map(({ rungId, sets, pairedWith }) => [rungId, sets, pairedWith])).toEqual([
      ['two fingers', '3', 'one finger'],
      ['one finger', '5', 'two fingers'],
      ['slow lean', '4', ''],
    ]);
  }
});

test('of two rungs of one ladder the line takes the place of the one it names', () => {
  const rows = [
    row(1, 'one finger', { pairedWith: 'no fingers' }),
    row(2, 'no fingers', { pairedWith: 'one finger' }),
  ];
  const all = [ladder('one-arm', 'two fingers', 'one finger', 'no fingers')];
  const back = takeLine(rows, line('two fingers', { replaces: 'no fingers', pairedWith: 'one finger' }), all);
  expect(back.rows.map(({ key, rungId, pairedWith }) => [key, rungId, pairedWith])).toEqual([
    [1, 'one finger', 'two fingers'],
    [2, 'two fingers', 'one finger'],
  ]);
});

test('of two rungs of one ladder that are no pyramid the named one gives way, and none where none is named', () => {
  const rows = [row(1, 'one finger'), row(2, 'no fingers')];
  const all = [ladder('one-arm', 'two fingers', 'one finger', 'no fingers')];
  const rungs = (replaces: string | null) =>
    takeLine(rows, line('two fingers', { replaces }), all).rows.map(({ rungId }) => rungId);
  expect(rungs('no fingers')).toEqual(['one finger', 'two fingers']);
  expect(rungs(null)).toEqual(['one finger', 'no fingers', 'two fingers']);
  expect(rungs('gone')).toEqual(['two fingers', 'no fingers']);
});

test('a half that is dropped leaves no pyramid behind, and one that was not taken is not named', () => {
  const rows = [
    row(1, 'one finger', { pairedWith: 'two fingers' }),
    row(2, 'two fingers', { pairedWith: 'one finger' }),
  ];
  const left = takeLine(rows, line('two fingers', { act: 'drop' }), ladders).rows;
  expect(left).toMatchObject([{ rungId: 'one finger', pairedWith: '' }]);
  const alone = takeLine(
    [row(1, 'one finger')],
    line('one finger', { pairedWith: 'two fingers' }),
    ladders,
  ).rows;
  expect(alone).toMatchObject([{ rungId: 'one finger', pairedWith: '' }]);
});

test('what a line takes the place of and stands beside is said', () => {
  const views = draftView(
    {
      id: 'd',
      by: null,
      createdAt: new Date('2026-11-24T09:00:00Z'),
      usedVersion: null,
      draft: {
        source: 'reason',
        reasonId: null,
        lines: [
          line('one finger', { replaces: 'two fingers', pairedWith: 'slow lean', why: 'Step up' }),
          line('slow lean', { replaces: 'slow lean', why: 'Lean on' }),
        ],
        why: 'Step up',
        notes: '',
        dropSkills: [],
        easyWeeks: [],
      },
    },
    { ladders, skills: [], today: '2026-11-25' },
  ).lines;
  expect(views.map(({ said, why }) => [said, why])).toEqual([
    ['one finger: 5 × 6 s, 2 a week, in session A, in place of two fingers; a pyramid with slow lean', ''],
    ['slow lean: 5 × 6 s, 2 a week, in session A', 'Lean on'],
  ]);
});

test('drop takes out its rung only, on its side; what is not there changes nothing', () => {
  const all = [row(1, 'one finger'), row(2, 'two fingers')];
  expect(seen(takeLine(all, line('one finger', { act: 'drop' }), ladders).rows)).toEqual([
    [2, 'two fingers', 'both', '4'],
  ]);
  expect(seen(takeLine(all, line('one finger', { act: 'drop', side: 'left' }), ladders).rows)).toEqual([
    [3, 'one finger', 'right', '4'],
    [2, 'two fingers', 'both', '4'],
  ]);
  expect(takeLine(all, line('slow lean', { act: 'drop' }), ladders).rows).toEqual(all);
  expect(takeLine(all, line('gone'), ladders).rows).toEqual(all);
});

test('a draft is listed in words, with its day and whether it was used', () => {
  const view = draftView(
    {
      id: 'd',
      by: 'Ines',
      createdAt: new Date('2026-11-24T09:00:00Z'),
      usedVersion: 4,
      draft: {
        source: 'reason',
        reasonId: null,
        lines: [line('one finger', { side: 'left' }), line('gone', { act: 'drop' })],
        why: '',
        notes: '',
        dropSkills: ['Planche'],
        easyWeeks: [],
        later: ['from Wed 2 Dec 80 %', 'from Wed 9 Dec as before'],
      },
    },
    { ladders, skills: [{ id: 's', name: 'Planche' }], today: '2026-11-25' },
  );
  expect(view.later).toBe('from Wed 2 Dec 80 %; from Wed 9 Dec as before');
  expect(view.title).toBe('Proposed from a reason, Tue 24 Nov, for Ines');
  expect(view.lines.map(({ said }) => said)).toEqual([
    'one finger, left: 5 × 6 s, 2 a week, in session A',
    'Take out of session A: A rung no longer in the ladders',
  ]);
  expect(view.dropSkills).toEqual([{ id: 's', name: 'Planche' }]);
  expect(view.used).toContain('Version 4');
});
