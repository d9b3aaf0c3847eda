import type { TableBlock } from '../report/blocks.ts';
import type { Style } from './lines.ts';
import {
  artifact,
  breakLines,
  type Element,
  INK,
  INK2,
  measureIn,
  need,
  newPage,
  RULE,
  type Sheet,
  setLine,
} from './sheet.ts';
import { element, setText } from './text-blocks.ts';

const CELL: Style = { face: 'measures', size: 8.9, leading: 10.8 };
const HEAD: Style = { face: 'measures-strong', size: 8.6, leading: 10.2 };
const CAPTION: Style = { face: 'measures-strong', size: 9.6, leading: 12 };
const NOTE: Style = { face: 'words', size: 8.2, leading: 10.2 };
const PAD = 4;
/** Words measured one by one come to a little more than the whole. */
const SLACK = 1.5;
const AIR = 3;
const WIDEST_SHARE = 0.5;

type Column = { x: number; width: number; numeric: boolean; head: string[] };

/** A table with caption, heads that come again on each page, and the name of the CSV that carries the same numbers. */
export function setTable(sheet: Sheet, block: TableBlock): void {
  const made = sheet.doc.struct('Table');
  need(sheet, CAPTION.leading + HEAD.leading * 2 + CELL.leading * 2 + 8);
  sheet.y += 2;
  sheet.root.add(made);
  setText(sheet, {
    tag: 'Caption',
    text: `${block.caption} · ${block.source}`,
    style: CAPTION,
    x: sheet.left,
    width: sheet.width,
    parent: made,
  });
  const columns = columnsOf(sheet, block);
  const heads = sheet.doc.struct('TR');
  made.add(heads);
  setHeads(sheet, columns, heads);
  heads.end();
  for (const row of block.rows) setRow(sheet, made, columns, row);
  made.end();
  sheet.y += 2;
  if (block.note)
    setText(sheet, {
      tag: 'P',
      text: block.note,
      style: NOTE,
      x: sheet.left,
      width: sheet.width,
      color: INK2,
    });
  sheet.y += 4;
}

function setHeads(sheet: Sheet, columns: readonly Column[], row: Element | undefined): void {
  const lines = Math.max(...columns.map((column) => column.head.length));
  const from = sheet.y + HEAD.size;
  for (const column of columns) {
    const draw = () =>
      column.head.forEach((line, index) => {
        const y = from + (lines - column.head.length + index) * HEAD.leading;
        setLine(sheet, line, { x: xOf(sheet, column, line, HEAD), y }, HEAD, INK2);
      });
    if (row) element(sheet, row, 'TH', draw, { scope: 'Column' });
    else artifact(sheet, draw);
  }
  sheet.y += lines * HEAD.leading + 2;
  line(sheet, 0.8, INK);
  sheet.y += 1.5;
}

function setRow(sheet: Sheet, made: Element, columns: readonly Column[], cells: readonly string[]): void {
  const lines = columns.map((column, index) => breakLines(sheet, cells[index] ?? '', column.width, CELL));
  const most = Math.max(1, ...lines.map((one) => one.length));
  const row = sheet.doc.struct('TR');
  made.add(row);
  const room = () => Math.floor((sheet.bottom - sheet.y - AIR) / CELL.leading);
  if (room() < Math.min(most, 4)) nextPage(sheet, columns);
  const cellOf = columns.map((_, index) => {
    const cell = sheet.doc.struct(
      index === 0 ? 'TH' : 'TD',
      index === 0 ? ({ scope: 'Row' } as PDFKit.Mixins.StructureElementOptions) : {},
    );
    row.add(cell);
    return cell;
  });
  let at = 0;
  while (at < most) {
    const fit = Math.max(1, Math.min(room(), most - at));
    const from = sheet.y + CELL.size;
    columns.forEach((column, index) => {
      const here = (lines[index] ?? []).slice(at, at + fit);
      if (here.length === 0) return;
      cellOf[index]?.add(() => {
        here.forEach((text, nth) => {
          setLine(sheet, text, { x: xOf(sheet, column, text, CELL), y: from + nth * CELL.leading }, CELL);
        });
      });
    });
    sheet.y += fit * CELL.leading + 1.5;
    at += fit;
    if (at < most) nextPage(sheet, columns);
  }
  for (const cell of cellOf) cell.end();
  row.end();
  line(sheet, 0.35, RULE);
  sheet.y += 1;
}

function nextPage(sheet: Sheet, columns: readonly Column[]): void {
  newPage(sheet);
  setHeads(sheet, columns, undefined);
}

function line(sheet: Sheet, width: number, color: string): void {
  const { y } = sheet;
  artifact(sheet, () =>
    sheet.doc
      .moveTo(sheet.left, y)
      .lineTo(sheet.left + sheet.width, y)
      .lineWidth(width)
      .stroke(color),
  );
}

function xOf(sheet: Sheet, column: Column, text: string, style: Style): number {
  return column.numeric ? column.x + column.width - measureIn(sheet, style)(text) : column.x;
}

/** Columns as wide as they ask where all fit; else words give way, numbers do not. */
function columnsOf(sheet: Sheet, { columns, rows }: TableBlock): Column[] {
  const cell = measureIn(sheet, CELL);
  const head = measureIn(sheet, HEAD);
  const sample = rows.slice(0, 200);
  const longestWord = (text: string) => Math.max(0, ...text.split(' ').map(head));
  const asked = columns.map(({ name, numeric }, index) => {
    const widest = Math.max(
      0,
      ...sample.map((row) => Math.max(0, ...(row[index] ?? '').split('\n').map(cell))),
    );
    return numeric
      ? Math.max(widest, longestWord(name), Math.min(head(name), 46)) + SLACK
      : Math.max(widest, longestWord(name), head(name) / 2) + SLACK;
  });
  const room = sheet.width - PAD * 2 * (columns.length - 1);
  const widths = shared(
    asked,
    columns.map((column) => column.numeric === true),
    room,
  );
  let x = sheet.left;
  return columns.map(({ name, numeric = false }, index) => {
    const width = widths[index] ?? 0;
    const column = { x, width, numeric, head: breakLines(sheet, name, width, HEAD) };
    x += width + PAD * 2;
    return column;
  });
}

function shared(asked: readonly number[], fixed: readonly boolean[], room: number): number[] {
  const total = asked.reduce((sum, width) => sum + width, 0);
  if (total <= room) {
    const last = asked.length - 1;
    // What is left goes to the last column of words, so that rows do not float apart.
    return asked.map((width, index) => (index === last && !fixed[last] ? width + room - total : width));
  }
  const held = asked.map((width, index) => (fixed[index] || width < room / asked.length ? width : 0));
  let left = room - held.reduce((sum, width) => sum + width, 0);
  const wide = asked.map((width, index) =>
    held[index] === 0 ? Math.min(width, room * WIDEST_SHARE * 2) : 0,
  );
  const wanted = wide.reduce((sum, width) => sum + width, 0);
  left = Math.max(left, room * 0.3);
  return asked.map((_, index) => held[index] || ((wide[index] ?? 0) / Math.max(1, wanted)) * left);
}
