import { daysBetween } from '#lib/domain/local-date.ts';
import type { BarsBlock, PainBlock } from '../report/blocks.ts';
import type { Style } from './lines.ts';
import { INK, INK2, measureIn, need, RULE, type Sheet, setLine, TINT } from './sheet.ts';
import { setText } from './text-blocks.ts';

const LABEL: Style = { face: 'measures', size: 8.2, leading: 10 };
const CAPTION: Style = { face: 'measures-strong', size: 9.6, leading: 12 };
const SIDE = 92;

/** Bars in one ink: tint with a cap, what lies over the usual band solid, unknown as a dotted base. */
export function setBars(sheet: Sheet, block: BarsBlock): void {
  const height = 44;
  need(sheet, CAPTION.leading + height + 26);
  setText(sheet, {
    tag: 'P',
    text: `${block.caption} · load_by_week.csv`,
    style: CAPTION,
    x: sheet.left,
    width: sheet.width,
  });
  if (block.bars.length === 0) {
    setText(sheet, {
      tag: 'P',
      text: 'Nothing is known yet.',
      style: LABEL,
      x: sheet.left,
      width: sheet.width,
    });
    return;
  }
  const top = Math.max(1, block.usual?.high ?? 0, ...block.bars.map((bar) => bar.value ?? 0));
  const base = sheet.y + 11 + height;
  const up = (value: number) => base - (value / top) * height;
  const width = sheet.width - SIDE;
  const step = width / block.bars.length;
  figure(sheet, block.alt, [sheet.left, sheet.y, sheet.left + sheet.width, base + 14], () => {
    const { doc } = sheet;
    block.bars.forEach((bar, index) => {
      const x = sheet.left + index * step + 2;
      const wide = step - 5;
      centered(sheet, bar.label, x + wide / 2, base + 9, LABEL, INK2);
      if (bar.value === null) {
        doc
          .moveTo(x, base)
          .lineTo(x + wide, base)
          .dash(1, { space: 2 })
          .lineWidth(0.8)
          .stroke(INK2)
          .undash();
        centered(sheet, 'unknown', x + wide / 2, base - 3, LABEL, INK2);
        return;
      }
      const inside = Math.min(bar.value, block.usual?.high ?? bar.value);
      if (inside > 0) doc.rect(x, up(inside), wide, base - up(inside)).fill(TINT);
      if (bar.value > inside) doc.rect(x, up(bar.value), wide, up(inside) - up(bar.value)).fill(INK);
      doc
        .moveTo(x, up(bar.value))
        .lineTo(x + wide, up(bar.value))
        .lineWidth(1.4)
        .stroke(INK);
      // Inside at the foot, where no line of the usual week runs; above where the tinted part is too low, or all is ink.
      const y = base - up(inside) > LABEL.leading + 4 ? base - 4 : up(bar.value) - 3;
      centered(sheet, `${bar.value}${bar.partly ? '+' : ''}`, x + wide / 2, y, LABEL, INK);
    });
    doc
      .moveTo(sheet.left, base)
      .lineTo(sheet.left + width, base)
      .lineWidth(0.5)
      .stroke(INK);
    if (block.usual) usualBand(sheet, block.usual, { width, up, unit: block.unit });
    else setLine(sheet, 'usual week not known yet', { x: sheet.left + width + 4, y: base - 20 }, LABEL, INK2);
    setLine(sheet, '+ : days unknown', { x: sheet.left + width + 4, y: base + 9 }, LABEL, INK2);
  });
  sheet.y = base + 16;
}

type Band = { width: number; up: (value: number) => number; unit: string };

function usualBand(
  sheet: Sheet,
  usual: { low: number; week: number; high: number },
  { width, up, unit }: Band,
): void {
  const { doc, left } = sheet;
  doc
    .moveTo(left, up(usual.high))
    .lineTo(left + width + 3, up(usual.high))
    .dash(4, { space: 2 })
    .lineWidth(0.7)
    .stroke(INK)
    .undash();
  doc
    .moveTo(left, up(usual.week))
    .lineTo(left + width + 3, up(usual.week))
    .dash(1, { space: 2 })
    .lineWidth(0.7)
    .stroke(INK)
    .undash();
  const near = up(usual.week) - up(usual.high) < LABEL.leading;
  setLine(
    sheet,
    `band to ${usual.high} ${unit}`,
    { x: left + width + 5, y: up(usual.high) + (near ? -1 : 3) },
    LABEL,
    INK2,
  );
  setLine(
    sheet,
    `usual week ${usual.week}`,
    { x: left + width + 5, y: up(usual.week) + (near ? 8 : 3) },
    LABEL,
    INK2,
  );
}

const DASHES: readonly number[][] = [[], [4, 2], [1, 2]];

/** Pain 0-10 on full scale: a dash and a mark for each place, the line at 6 drawn and named. */
export function setPain(sheet: Sheet, block: PainBlock): void {
  const height = 92;
  need(sheet, CAPTION.leading + height + 30);
  setText(sheet, {
    tag: 'P',
    text: `${block.caption} · pain.csv`,
    style: CAPTION,
    x: sheet.left,
    width: sheet.width,
  });
  const width = sheet.width - SIDE - 40;
  const base = sheet.y + 6 + height;
  const across = (date: string) =>
    sheet.left +
    12 +
    (daysBetween(block.from, date) / Math.max(1, daysBetween(block.from, block.to))) * (width - 14);
  const up = (value: number) => base - (value / 10) * height;
  figure(sheet, block.alt, [sheet.left, sheet.y, sheet.left + sheet.width, base + 14], () => {
    const { doc, left } = sheet;
    for (const value of [0, 5, 10]) {
      doc
        .moveTo(left + 10, up(value))
        .lineTo(left + width, up(value))
        .lineWidth(0.3)
        .stroke(RULE);
      setLine(sheet, String(value), { x: left, y: up(value) + 3 }, LABEL, INK2);
    }
    doc
      .moveTo(left + 10, up(6))
      .lineTo(left + width, up(6))
      .dash(4, { space: 2 })
      .lineWidth(0.8)
      .stroke(INK)
      .undash();
    setLine(sheet, '6: stop, see a clinician', { x: left + 14, y: up(6) - 3 }, LABEL, INK2);
    let named = base + 8;
    block.lines
      .map((line, index) => ({ ...line, index }))
      .sort((a, b) => (a.points.at(-1)?.value ?? 0) - (b.points.at(-1)?.value ?? 0))
      .forEach(({ name, points, index }) => {
        const dash = DASHES[index] ?? [];
        points.forEach((point, nth) => {
          const before = points[nth - 1];
          // A line over more than a week without a word would bridge what nobody knows.
          if (before && daysBetween(before.date, point.date) <= 7) {
            doc
              .moveTo(across(before.date), up(before.value))
              .lineTo(across(point.date), up(point.value))
              .lineWidth(1);
            if (dash.length > 0) doc.dash(dash[0] ?? 1, { space: dash[1] ?? 2 });
            doc.stroke(INK).undash();
          }
        });
        for (const point of points) mark(sheet, index, across(point.date), up(point.value));
        named = Math.min(named - LABEL.leading, up(points.at(-1)?.value ?? 0) + 3);
        mark(sheet, index, left + width + 8, named - 3);
        setLine(sheet, name, { x: left + width + 14, y: named }, LABEL);
      });
    setLine(sheet, block.from, { x: left + 10, y: base + 11 }, LABEL, INK2);
    setLine(
      sheet,
      block.to,
      { x: left + width - measureIn(sheet, LABEL)(block.to), y: base + 11 },
      LABEL,
      INK2,
    );
  });
  sheet.y = base + 18;
}

/** Filled disc, hollow square, hollow triangle: told apart without colour. */
function mark({ doc }: Sheet, index: number, x: number, y: number): void {
  if (index === 0) doc.circle(x, y, 1.9).fill(INK);
  else if (index === 1)
    doc
      .rect(x - 1.9, y - 1.9, 3.8, 3.8)
      .lineWidth(0.8)
      .fillAndStroke('#FFFFFF', INK);
  else
    doc
      .polygon([x, y - 2.4], [x + 2.2, y + 1.8], [x - 2.2, y + 1.8])
      .lineWidth(0.8)
      .fillAndStroke('#FFFFFF', INK);
}

function centered(sheet: Sheet, text: string, x: number, y: number, style: Style, color: string): void {
  setLine(sheet, text, { x: x - measureIn(sheet, style)(text) / 2, y }, style, color);
}

function figure(sheet: Sheet, alt: string, bbox: [number, number, number, number], draw: () => void): void {
  const made = sheet.doc.struct('Figure', { alt, bbox } as PDFKit.Mixins.StructureElementOptions);
  sheet.root.add(made);
  made.add(draw);
  made.end();
}
