import type { Block, Paper, Report } from '../report/blocks.ts';
import { setBars, setPain } from './charts.ts';
import type { Style } from './lines.ts';
import { INK2, measureIn, newPage, newSheet, type Sheet, setLine } from './sheet.ts';
import { setTable } from './table-block.ts';
import { setCaution, setFacts, setHeading, setList, setParagraph } from './text-blocks.ts';

const FOOT: Style = { face: 'measures', size: 8, leading: 10 };

/**
 * A report as a tagged PDF (structure, language, title, bookmarks), in one ink. Letters that no font of ours has stand as
 * boxes, and the last lines say so. The same report gives the same bytes.
 */
export async function* reportPdf(report: Report, paper: Paper): AsyncGenerator<Uint8Array> {
  const sheet = newSheet(report, paper);
  for (const block of report.blocks) setBlock(sheet, block);
  if (sheet.missing.size > 0) {
    setParagraph(sheet, {
      kind: 'text',
      tone: 'small',
      text: `${sheet.missing.size} kinds of letters are not in the fonts of this PDF and stand as boxes; report.html and the tables carry them as they were written.`,
    });
  }
  setFeet(sheet, report);
  sheet.root.end();
  sheet.doc.end();
  yield* sheet.doc as unknown as AsyncIterable<Uint8Array>;
}

type Setters = { [Kind in Block['kind']]: (sheet: Sheet, block: Extract<Block, { kind: Kind }>) => void };
const SETTERS: Setters = {
  heading: setHeading,
  text: setParagraph,
  list: setList,
  facts: setFacts,
  table: setTable,
  bars: setBars,
  pain: setPain,
  caution: setCaution,
  'new-page': newPage,
};

function setBlock(sheet: Sheet, block: Block): void {
  const set = SETTERS[block.kind] as (sheet: Sheet, block: Block) => void;
  set(sheet, block);
}

function setFeet(sheet: Sheet, report: Report): void {
  const { doc } = sheet;
  const { start, count } = doc.bufferedPageRange();
  for (let page = start; page < start + count; page += 1) {
    doc.switchToPage(page);
    doc.markContent('Artifact', { type: 'Pagination' });
    const said = `Page ${page - start + 1} of ${count}`;
    const y = sheet.bottom + 22;
    setLine(sheet, report.foot, { x: sheet.left, y }, FOOT, INK2);
    setLine(sheet, said, { x: sheet.left + sheet.width - measureIn(sheet, FOOT)(said), y }, FOOT, INK2);
    doc.endMarkedContent();
  }
}
