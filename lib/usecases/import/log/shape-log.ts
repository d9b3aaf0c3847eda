import type { HistoryRung } from '#lib/domain/history.ts';
import { parseAmount } from '#lib/domain/parse-amount.ts';
import type { PainRegion, PainSide, Side } from '#lib/domain/vocabulary.ts';
import type { LogColumn } from '#lib/views/old-log/log-columns.ts';
import type { Sheet, SheetRow } from '../read-sheet.ts';
import { logAmounts } from './log-amounts.ts';
import { type DateOrder, logDate } from './log-date.ts';
import { foldedWord } from './log-drills.ts';

/** What a person said about a log: what each column holds, in which order dates are written, what each drill is. */
export type LogMapping = {
  columns: readonly LogColumn[];
  dateOrder: DateOrder;
  /** Wordings of drills with the rung each means; null: no drill of the team, kept among the words of the day. */
  drills: readonly { word: string; rungId: string | null }[];
  /** The place that the pain column speaks of. */
  pain: { region: PainRegion; side: PainSide } | null;
};
export type LogProblem = { line: number; column: string; message: string };
export type LogSet = {
  line: number;
  rungId: string;
  side: Side;
  value: number;
  tried: number | null;
  addedKg: number | null;
};
export type LogDay = {
  date: string;
  lines: number[];
  /** A drill was told, whether the team has it or not. */
  trained: boolean;
  sets: LogSet[];
  effort: number | null;
  minutes: number | null;
  pain: number | null;
  words: string[];
};
export type ShapedLog = { days: LogDay[]; problems: LogProblem[] };

const SIDE_WORDS: Record<string, Side> = {
  l: 'left',
  left: 'left',
  r: 'right',
  right: 'right',
  b: 'both',
  both: 'both',
  '': 'both',
};

/**
 * The rows of a log as days of training, oldest first, with everything that cannot be read, each with its line, column
 * and what to do. Nothing is guessed: a side that a drill asks for and the row does not say is a problem. Pure.
 */
export function shapeLog(
  { head, rows }: Sheet,
  mapping: LogMapping,
  { rungs, today }: { rungs: ReadonlyMap<string, HistoryRung>; today: string },
): ShapedLog {
  const problems: LogProblem[] = [];
  const days = new Map<string, LogDay>();
  const rungOf = new Map(mapping.drills.map(({ word, rungId }) => [foldedWord(word), rungId]));
  for (const row of rows) {
    const reader = readerOf(row, head, mapping, problems);
    const date = dateOf(reader, mapping.dateOrder, today);
    if (date === undefined) continue;
    const day = days.get(date) ?? newDay(date);
    days.set(date, day);
    day.lines.push(row.line);
    sayOnce(day, 'effort', reader.number('effort', 'count', { least: 0, most: 10 }), reader);
    sayOnce(day, 'minutes', reader.number('minutes', 'minutes', { least: 1, most: 600 }), reader);
    const pain = reader.number('pain', 'count', { least: 0, most: 10 });
    if (pain !== undefined) day.pain = Math.max(day.pain ?? 0, pain);
    const words = reader.cell('words');
    if (words !== '' && !day.words.includes(words)) day.words.push(words);
    addSets(day, reader, (word) => rungOf.get(foldedWord(word)), rungs);
  }
  const ordered = [...days.values()].sort((a, b) => (a.date < b.date ? -1 : 1));
  return { days: ordered, problems: problems.sort((a, b) => a.line - b.line) };
}

type Reader = {
  line: number;
  cell: (column: LogColumn) => string;
  say: (column: LogColumn, message: string) => void;
  number: (
    column: LogColumn,
    kind: 'count' | 'minutes' | 'kg',
    range: { least: number; most: number },
  ) => number | undefined;
};

function readerOf(
  { line, cells }: SheetRow,
  head: readonly string[],
  { columns }: LogMapping,
  problems: LogProblem[],
): Reader {
  const cell = (column: LogColumn) =>
    columns
      .flatMap((one, at) => (one === column && cells[at] ? [cells[at].normalize('NFC')] : []))
      .join('; ');
  const say = (column: LogColumn, message: string) =>
    void problems.push({ line, column: head[columns.indexOf(column)] ?? column, message });
  return {
    line,
    cell,
    say,
    number: (column, kind, { least, most }) => {
      const text = cell(column);
      if (text === '' || text === '-') return undefined;
      const value = parseAmount(text, kind);
      if (
        value !== undefined &&
        value >= least &&
        value <= most &&
        (kind === 'kg' || Number.isInteger(value))
      )
        return value;
      say(column, `“${text}” is no ${kind === 'kg' ? 'number' : 'whole number'} ${least} to ${most}`);
      return undefined;
    },
  };
}

function dateOf(reader: Reader, order: DateOrder, today: string): string | undefined {
  const text = reader.cell('date');
  const date = logDate(text, order);
  if (date === undefined) {
    reader.say('date', text === '' ? 'is empty: each row needs its day' : `“${text}” is no day that exists`);
    return undefined;
  }
  if (date <= today) return date;
  reader.say('date', `${date} lies ahead`);
  return undefined;
}

function newDay(date: string): LogDay {
  return { date, lines: [], trained: false, sets: [], effort: null, minutes: null, pain: null, words: [] };
}

/** What is said of a whole session may stand in each of its rows, but then it has to be the same. */
function sayOnce(day: LogDay, what: 'effort' | 'minutes', value: number | undefined, reader: Reader): void {
  if (value === undefined) return;
  const there = day[what];
  if (there === null) day[what] = value;
  else if (there !== value)
    reader.say(what, `is ${value} here and ${there} in a row above of the same day: make them equal`);
}

function addSets(
  day: LogDay,
  reader: Reader,
  rungIdOf: (word: string) => string | null | undefined,
  rungs: ReadonlyMap<string, HistoryRung>,
): void {
  const word = reader.cell('drill');
  if (word === '') {
    if (reader.cell('value') !== '' || reader.cell('left') !== '' || reader.cell('right') !== '')
      reader.say('drill', 'is empty, and there is a result in this row');
    return;
  }
  day.trained = true;
  const rungId = rungIdOf(word);
  if (rungId === undefined) {
    reader.say('drill', `“${word}” is not among the drills that were matched: look through the log again`);
    return;
  }
  if (rungId === null) {
    keepAsWords(day, reader, word);
    return;
  }
  const rung = rungs.get(rungId);
  if (!rung) {
    reader.say('drill', `“${word}” was matched with a drill that is not in your ladders`);
    return;
  }
  for (const [column, side] of sidesOf(reader, rung)) addSide(day, reader, { rung, column, side });
}

/** No drill of the team: its row stays readable in the words of the day. */
function keepAsWords(day: LogDay, reader: Reader, word: string): void {
  const told = (['side', 'sets', 'value', 'left', 'right', 'added'] as const)
    .map((column) => reader.cell(column))
    .filter((cell) => cell !== '');
  day.words.push([word, ...told].join(' '));
}

/** Which cell holds which side. */
function sidesOf(reader: Reader, rung: HistoryRung): [LogColumn, Side][] {
  const each = (['left', 'right'] as const).filter((side) => reader.cell(side) !== '');
  const word = reader.cell('side');
  const side = SIDE_WORDS[foldedWord(word)];
  if (side === undefined) {
    reader.say('side', `“${word}” is none of left, right, both`);
    return [];
  }
  const found: [LogColumn, Side][] = each.map((one) => [one, one]);
  if (reader.cell('value') !== '') found.push(['value', side]);
  if (found.length === 0) {
    reader.say('value', `is empty: what was done of “${reader.cell('drill')}”?`);
    return [];
  }
  const wrong = found.find(([, one]) => (one === 'both') === rung.eachSide);
  if (!wrong) return found;
  reader.say(
    wrong[0] === 'value' ? 'side' : wrong[0],
    rung.eachSide
      ? `“${rung.name}” is done on each side: say left or right, or match the drill with none`
      : `“${rung.name}” is done with both sides together: say both, or match the drill with another`,
  );
  return [];
}

function addSide(
  day: LogDay,
  reader: Reader,
  { rung, column, side }: { rung: HistoryRung; column: LogColumn; side: Side },
): void {
  const sets = reader.number('sets', 'count', { least: 1, most: 50 });
  const text = reader.cell(column);
  const amounts = logAmounts(text, rung.measure, sets);
  if (amounts === undefined) {
    const asked =
      rung.measure === 'made-tried' ? 'made of tried such as 7/10' : 'an amount such as 12, 3x8 or 10/8/8';
    const against = sets === undefined ? '' : ` that fits ${sets} ${sets === 1 ? 'set' : 'sets'}`;
    reader.say(column, `“${text}” is not ${asked}${against}`);
    return;
  }
  const addedKg = reader.number('added', 'kg', { least: 0, most: 300 }) ?? null;
  for (const { value, tried } of amounts)
    day.sets.push({ line: reader.line, rungId: rung.id, side, value, tried, addedKg: addedKg || null });
}
