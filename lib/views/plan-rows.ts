import type { PlanLine } from '#lib/domain/plan-line.ts';
import type { Side, Support } from '#lib/domain/vocabulary.ts';
import { movedTo } from './ladders/moved-to.ts';

/** One line of the form, as text: what was typed is kept as typed. */
export type FormRow = {
  key: number;
  session: string;
  ladderId: string;
  rungId: string;
  side: Side;
  sets: string;
  target: string;
  minutes: string;
  timesPerWeek: string;
  /** Empty: none, or whatever there is. */
  support: Support | '';
  stopRule: string;
  notTwoDaysRunning: boolean;
  pairedWith: string;
  noKitRungId: string;
};

export function emptyRow(key: number, session: string): FormRow {
  return {
    key,
    session,
    ladderId: '',
    rungId: '',
    side: 'both',
    sets: '',
    target: '',
    minutes: '',
    timesPerWeek: '3',
    support: '',
    stopRule: '',
    notTwoDaysRunning: false,
    pairedWith: '',
    noKitRungId: '',
  };
}

/** A key that no row has yet. */
export function nextKey(rows: readonly FormRow[]): number {
  return Math.max(-1, ...rows.map((row) => row.key)) + 1;
}

/** Kept lines as rows of the form; left and right of one rung with the same dose stand in one row again. */
export function toRows(items: readonly PlanLine[], ladderOf: (rungId: string) => string): FormRow[] {
  return sidesTogether(items).map((item, key) => toRow(item, key, ladderOf(item.rungId)));
}

/** Left and right of one rung with the same dose as one line. */
export function sidesTogether<Item extends { side: Side }>(items: readonly Item[]): Item[] {
  const left = new Set<Item>();
  const joined = new Set<Item>();
  const bare = (item: Item) => JSON.stringify({ ...item, side: '' });
  for (const item of items) {
    if (item.side !== 'right') continue;
    const other = items.find((one) => one.side === 'left' && !joined.has(one) && bare(one) === bare(item));
    if (!other) continue;
    joined.add(other);
    left.add(item);
  }
  return items
    .filter((item) => !left.has(item))
    .map((item) => (joined.has(item) ? { ...item, side: 'both' as const } : item));
}

export function toRow(item: PlanLine, key: number, ladderId: string): FormRow {
  const text = (value: number | null) => (value === null ? '' : String(value));
  return {
    key,
    session: item.session,
    ladderId,
    rungId: item.rungId,
    side: item.side,
    sets: String(item.sets),
    target: text(item.target),
    minutes: text(item.minutes),
    timesPerWeek: String(item.timesPerWeek),
    support: item.support ?? '',
    stopRule: item.stopRule,
    notTwoDaysRunning: item.notTwoDaysRunning,
    pairedWith: item.pairedWith ?? '',
    noKitRungId: item.noKitRungId ?? '',
  };
}

/** A row for both sides as two, left above right, so that each can stand on its own rung. */
export function sidesApart(rows: readonly FormRow[], key: number): FormRow[] {
  const fresh = nextKey(rows);
  return rows.flatMap((row): FormRow[] =>
    row.key === key && row.side === 'both'
      ? [
          { ...row, side: 'left' },
          { ...row, side: 'right', key: fresh },
        ]
      : [row],
  );
}

/** The rows without a pyramid whose other half is not in the session any more. */
export function tidyPairs(rows: readonly FormRow[]): FormRow[] {
  const isThere = (row: FormRow) =>
    rows.some(
      (one) =>
        one !== row &&
        one.session === row.session &&
        one.rungId === row.pairedWith &&
        one.rungId !== row.rungId,
    );
  return rows.map((row) => (row.pairedWith && !isThere(row) ? { ...row, pairedWith: '' } : row));
}

/** The row at another place within its session, from 0; places outside are the ends. Rows of others stay where they are. */
export function moveRow(rows: readonly FormRow[], key: number, to: number): FormRow[] {
  const session = rows.find((row) => row.key === key)?.session;
  const here = rows.filter((row) => row.session === session).map((row) => ({ id: String(row.key), row }));
  const moved = movedTo(here, String(key), to).values();
  return rows.map((row) => (row.session === session ? (moved.next().value?.row ?? row) : row));
}

/** What was typed as a number; undefined: not a number yet. Empty: null. */
export function typedNumber(text: string): number | null | undefined {
  if (text.trim() === '') return null;
  const value = Number(text.replace(',', '.'));
  return Number.isFinite(value) ? value : undefined;
}
