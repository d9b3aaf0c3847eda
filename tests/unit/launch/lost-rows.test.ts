import { describe, expect, it } from 'vitest';
import { lostRows } from '#lib/launch/backup/lost-rows.ts';

const quiet = (rows: Record<string, number>) => ({ before: rows, after: rows, changed: {} });

describe('what a backup lacks', () => {
  it('is nothing when every table has its rows', () => {
    expect(lostRows(quiet({ client: 3, reason: 0 }), { client: 3, reason: 0 })).toEqual([]);
  });

  it('is a table without a row whose source has some, whatever changed meanwhile', () => {
    const source = { before: { client: 3 }, after: { client: 4 }, changed: { client: 90 } };
    expect(lostRows(source, { client: 0 })).toEqual(['client: 0 rows, 3 in the source']);
  });

  it('is a table that is not there', () => {
    expect(lostRows(quiet({ client: 3 }), {})).toEqual(['client: the table is missing']);
  });

  it.each([2, 4])('is a row too few or too many (%i of 3)', (rows) => {
    expect(lostRows(quiet({ client: 3 }), { client: rows })).toEqual([
      `client: ${rows} rows, 3 in the source`,
    ]);
  });

  it.each([
    [9, 'too few'],
    [22, 'too many'],
  ])('is outside what came and went meanwhile (%i, %s)', (rows) => {
    const source = { before: { session: 12 }, after: { session: 20 }, changed: { session: 1 } };
    expect(lostRows(source, { session: rows })).toHaveLength(1);
  });

  it.each([11, 12, 16, 20, 21])('is nothing within it (%i)', (rows) => {
    const source = { before: { session: 12 }, after: { session: 20 }, changed: { session: 1 } };
    expect(lostRows(source, { session: rows })).toEqual([]);
  });

  it('does not ask for a table that was dropped meanwhile', () => {
    expect(lostRows({ before: { old: 3 }, after: {}, changed: {} }, {})).toEqual([]);
  });

  it('may be empty where the source was emptied meanwhile', () => {
    expect(
      lostRows({ before: { token: 3 }, after: { token: 0 }, changed: { token: 3 } }, { token: 0 }),
    ).toEqual([]);
  });
});
