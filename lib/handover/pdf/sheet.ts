import PDFDocument from 'pdfkit';
import type { Paper, Report } from '../report/blocks.ts';
import type { Face, FontName } from './font-files.ts';
import { linesOf, type Measure, type Style } from './lines.ts';
import { pathOf, type Run, runsOf } from './runs.ts';

export type Doc = InstanceType<typeof PDFDocument>;
export type Element = ReturnType<Doc['struct']>;

export const INK = '#161D1A';
export const INK2 = '#434D47';
export const RULE = '#7F8A82';
export const TINT = '#D5DBD3';
const MARGIN = { top: 42, bottom: 46, side: 46 };

/** The paper while it is written on: where the next thing stands, and how letters are measured and set. */
export type Sheet = {
  doc: Doc;
  root: Element;
  left: number;
  width: number;
  top: number;
  bottom: number;
  y: number;
  /** Letters that no font has. */
  missing: Set<string>;
  /** Whether a font has a letter, by both. */
  known: Map<string, boolean>;
};

/** A tagged document in a paper size, with language and title, and its structure's root. */
export function newSheet(report: Report, paper: Paper): Sheet {
  const doc = new PDFDocument({
    size: paper === 'A4' ? 'A4' : 'LETTER',
    margin: 0,
    pdfVersion: '1.7',
    subset: 'PDF/UA',
    tagged: true,
    lang: 'en',
    displayTitle: true,
    autoFirstPage: false,
    bufferPages: true,
    font: pathOf('words'),
    info: {
      Title: report.title,
      Author: report.author,
      Subject: report.subject,
      Creator: 'Plumbline',
      Producer: 'Plumbline',
      CreationDate: report.made,
      ModDate: report.made,
    },
    // The types know PDF/A only.
  } as unknown as PDFKit.PDFDocumentOptions);
  doc.addPage();
  const root = doc.struct('Document');
  doc.addStructure(root);
  return {
    doc,
    root,
    left: MARGIN.side,
    width: doc.page.width - 2 * MARGIN.side,
    top: MARGIN.top,
    bottom: doc.page.height - MARGIN.bottom,
    y: MARGIN.top,
    missing: new Set(),
    known: new Map(),
  };
}

export function newPage(sheet: Sheet): void {
  sheet.doc.addPage();
  sheet.y = sheet.top;
}

/** A new page when fewer than `height` points are left. */
export function need(sheet: Sheet, height: number): void {
  if (sheet.y + height > sheet.bottom && sheet.y > sheet.top) newPage(sheet);
}

/** What is drawn for the eye only: rules, page numbers, repeated heads. */
export function artifact(sheet: Sheet, draw: () => void): void {
  sheet.doc.markContent('Artifact', { type: 'Layout' });
  draw();
  sheet.doc.endMarkedContent();
}

type FontkitFont = { hasGlyphForCodePoint: (code: number) => boolean };

function hasLetter({ doc, known }: Sheet, font: FontName, code: number): boolean {
  const key = `${font} ${code}`;
  const there = known.get(key);
  if (there !== undefined) return there;
  doc.font(pathOf(font));
  // pdfkit keeps the opened font file here; asking it is cheaper than opening each a second time.
  const opened = (doc as unknown as { _font: { font: FontkitFont } })._font.font;
  const has = opened.hasGlyphForCodePoint(code);
  known.set(key, has);
  return has;
}

export function runs(sheet: Sheet, text: string, face: Face): Run[] {
  return runsOf(
    text,
    face,
    (font, code) => hasLetter(sheet, font, code),
    (letter) => sheet.missing.add(letter),
  );
}

export function measureIn(sheet: Sheet, { face, size }: Style): Measure {
  return (text) =>
    runs(sheet, text, face).reduce(
      (sum, run) =>
        sum + sheet.doc.font(pathOf(run.font)).fontSize(size).widthOfString(run.text, shaping(run)),
      0,
    );
}

export function breakLines(sheet: Sheet, text: string, width: number, style: Style): string[] {
  return linesOf(text, width, measureIn(sheet, style));
}

/** One line with its baseline at `y`. */
export function setLine(
  sheet: Sheet,
  text: string,
  at: { x: number; y: number },
  style: Style,
  color = INK,
): void {
  let { x } = at;
  for (const run of runs(sheet, text, style.face)) {
    const { doc } = sheet;
    doc.font(pathOf(run.font)).fontSize(style.size).fillColor(color);
    doc.text(run.text, x, at.y, { lineBreak: false, baseline: 'alphabetic', ...shaping(run) });
    x += doc.widthOfString(run.text, shaping(run));
  }
}

/** With features named pdfkit shapes a run as a whole: words from right to left keep their order. */
function shaping({ font }: Run): { features: ['kern'] } | Record<string, never> {
  return font === 'dejavu' || font === 'devanagari' ? { features: ['kern'] } : {};
}
