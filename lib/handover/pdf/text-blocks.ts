import type { Block } from '../report/blocks.ts';
import type { Style } from './lines.ts';
import {
  artifact,
  breakLines,
  type Element,
  INK,
  INK2,
  need,
  newPage,
  RULE,
  type Sheet,
  setLine,
} from './sheet.ts';

const BODY: Style = { face: 'words', size: 9.3, leading: 11.6 };
const STYLES = {
  lead: { face: 'words', size: 11, leading: 14 },
  small: { face: 'words', size: 8.4, leading: 10.6 },
  'own-words': { face: 'words-slanted', size: 10, leading: 13 },
} as const satisfies Record<string, Style>;
const HEADINGS = {
  1: { face: 'words-strong', size: 21, leading: 24, before: 0, after: 3 },
  2: { face: 'words-strong', size: 12.4, leading: 14, before: 5, after: 1.5 },
  3: { face: 'words-strong', size: 10.4, leading: 13, before: 6, after: 1.5 },
} as const;
const GAP = 3;
const INDENT = 10;
const NAME_WIDTH = 54;
const CAPTION_ROOM = 44;

/** A heading with its bookmark; one of the second level stands under a rule. Keeps room for what follows it. */
export function setHeading(sheet: Sheet, block: Extract<Block, { kind: 'heading' }>): void {
  const { before, after, ...style } = HEADINGS[block.level];
  need(sheet, before + style.leading + after + CAPTION_ROOM);
  if (sheet.y > sheet.top) sheet.y += before;
  if (block.level === 2) {
    const { y } = sheet;
    artifact(sheet, () =>
      sheet.doc
        .moveTo(sheet.left, y)
        .lineTo(sheet.left + sheet.width, y)
        .lineWidth(0.9)
        .stroke(INK),
    );
    sheet.y += 3;
  }
  if (block.level < 3) sheet.doc.outline.addItem(block.text);
  setText(sheet, { tag: `H${block.level}`, text: block.text, style, x: sheet.left, width: sheet.width });
  sheet.y += after;
}

export function setParagraph(sheet: Sheet, block: Extract<Block, { kind: 'text' }>): void {
  const style = block.tone ? STYLES[block.tone] : BODY;
  const color = block.tone === 'small' ? INK2 : INK;
  setText(sheet, { tag: 'P', text: block.text, style, x: sheet.left, width: sheet.width, color });
  sheet.y += GAP;
}

export function setList(sheet: Sheet, { items }: Extract<Block, { kind: 'list' }>): void {
  const list = sheet.doc.struct('L');
  sheet.root.add(list);
  for (const item of items) {
    need(sheet, BODY.leading);
    const line = sheet.doc.struct('LI');
    list.add(line);
    const y = sheet.y + BODY.size;
    element(sheet, line, 'Lbl', () => setLine(sheet, '–', { x: sheet.left, y }, BODY));
    setText(sheet, {
      tag: 'LBody',
      text: item,
      style: BODY,
      x: sheet.left + INDENT,
      width: sheet.width - INDENT,
      parent: line,
    });
    line.end();
  }
  list.end();
  sheet.y += GAP;
}

/** Names in the margin, what they say beside them. */
export function setFacts(sheet: Sheet, { facts }: Extract<Block, { kind: 'facts' }>): void {
  const name: Style = { face: 'measures-strong', size: 9, leading: BODY.leading };
  const list = sheet.doc.struct('L');
  sheet.root.add(list);
  for (const fact of facts) {
    need(sheet, BODY.leading);
    const line = sheet.doc.struct('LI');
    list.add(line);
    const y = sheet.y + BODY.size;
    element(sheet, line, 'Lbl', () => setLine(sheet, fact.name, { x: sheet.left, y }, name, INK2));
    setText(sheet, {
      tag: 'LBody',
      text: fact.text,
      style: BODY,
      x: sheet.left + NAME_WIDTH,
      width: sheet.width - NAME_WIDTH,
      parent: line,
    });
    line.end();
  }
  list.end();
}

/** The cautions, between two rules. */
export function setCaution(sheet: Sheet, { lines }: Extract<Block, { kind: 'caution' }>): void {
  const style: Style = { face: 'words', size: 8.5, leading: 10.2 };
  const height = lines.reduce(
    (sum, line) => sum + breakLines(sheet, line, sheet.width, style).length * style.leading + 2,
    0,
  );
  need(sheet, height + 24);
  sheet.y += 4;
  rule(sheet);
  sheet.y += 4;
  setText(sheet, {
    tag: 'H2',
    text: 'Cautions',
    style: { face: 'words-strong', size: 10.4, leading: 13 },
    x: sheet.left,
    width: sheet.width,
  });
  for (const line of lines) {
    setText(sheet, { tag: 'P', text: line, style, x: sheet.left, width: sheet.width });
    sheet.y += 2;
  }
  sheet.y += 2;
  rule(sheet);
  sheet.y += 4;
}

function rule(sheet: Sheet): void {
  const { y } = sheet;
  artifact(sheet, () =>
    sheet.doc
      .moveTo(sheet.left, y)
      .lineTo(sheet.left + sheet.width, y)
      .lineWidth(0.6)
      .stroke(RULE),
  );
}

type Setting = {
  tag: string;
  text: string;
  style: Style;
  x: number;
  width: number;
  parent?: Element;
  color?: string;
};

/** Lines of one element; where a page ends, the element goes on on the next. */
export function setText(sheet: Sheet, { tag, text, style, x, width, parent, color = INK }: Setting): void {
  const made = sheet.doc.struct(tag);
  (parent ?? sheet.root).add(made);
  const lines = breakLines(sheet, text, width, style);
  let at = 0;
  while (at < lines.length) {
    if (sheet.y + style.leading > sheet.bottom) newPage(sheet);
    const fit = Math.max(1, Math.floor((sheet.bottom - sheet.y) / style.leading));
    const here = lines.slice(at, at + fit);
    const from = sheet.y + style.size;
    made.add(() => {
      for (const [index, line] of here.entries())
        setLine(sheet, line, { x, y: from + index * style.leading }, style, color);
    });
    sheet.y += here.length * style.leading;
    at += here.length;
  }
  made.end();
}

export function element(
  sheet: Sheet,
  parent: Element,
  tag: string,
  draw: () => void,
  options: { scope?: string } = {},
): void {
  const made = sheet.doc.struct(tag, options as PDFKit.Mixins.StructureElementOptions);
  parent.add(made);
  made.add(draw);
  made.end();
}
