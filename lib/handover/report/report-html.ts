import { daysBetween } from '#lib/domain/local-date.ts';
import type { BarsBlock, Block, PainBlock, Paper, Report, TableBlock } from './blocks.ts';
import { HTML_STYLE } from './html-style.ts';

/** The same report as one page that needs nothing else: no scripts, no addresses; sets itself on paper when printed. */
export function reportHtml(report: Report, paper: Paper): string {
  return [
    '<!DOCTYPE html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta http-equiv="Content-Security-Policy" content="default-src \'none\'; style-src \'unsafe-inline\'">',
    `<title>${text(report.title)}</title>`,
    `<style>@page{size:${paper === 'A4' ? 'A4' : 'letter'};margin:15mm}${HTML_STYLE}</style>`,
    '</head>',
    '<body><main>',
    ...report.blocks.map(htmlOf),
    `</main><footer><p>${text(report.foot)}</p></footer></body></html>`,
    '',
  ].join('\n');
}

function htmlOf(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return `<h${block.level}>${text(block.text)}</h${block.level}>`;
    case 'text':
      return `<p${block.tone ? ` class="${block.tone}"` : ''} dir="auto">${text(block.text).replaceAll('\n', '<br>')}</p>`;
    case 'list':
      return `<ul>${block.items.map((item) => `<li dir="auto">${text(item)}</li>`).join('')}</ul>`;
    case 'facts':
      return `<dl>${block.facts.map((fact) => `<dt>${text(fact.name)}</dt><dd dir="auto">${text(fact.text)}</dd>`).join('')}</dl>`;
    case 'table':
      return tableOf(block);
    case 'bars':
      return barsOf(block);
    case 'pain':
      return painOf(block);
    case 'caution':
      return `<section class="caution"><h2>Cautions</h2>${block.lines.map((line) => `<p>${text(line)}</p>`).join('')}</section>`;
    case 'new-page':
      return '<hr class="page">';
  }
}

function tableOf({ caption, source, columns, rows, note }: TableBlock): string {
  const cls = (index: number) => (columns[index]?.numeric ? ' class="n"' : '');
  const head = columns
    .map((column, index) => `<th scope="col"${cls(index)}>${text(column.name)}</th>`)
    .join('');
  const cell = (value: string, index: number) =>
    index === 0
      ? `<th scope="row"${cls(0)} dir="auto">${text(value)}</th>`
      : `<td${cls(index)} dir="auto">${text(value)}</td>`;
  const body = rows.map((row) => `<tr>${row.map(cell).join('')}</tr>`).join('\n');
  return `<div class="wide" tabindex="0" role="region" aria-label="${text(caption)}"><table><caption>${text(caption)} · <code>${text(source)}</code></caption><thead><tr>${head}</tr></thead><tbody>${body}</tbody></table></div>${note ? `<p class="small">${text(note)}</p>` : ''}`;
}

const WIDE = 720;

function barsOf({ bars, usual, alt, caption, unit }: BarsBlock): string {
  const high = 90;
  const top = Math.max(1, usual?.high ?? 0, ...bars.map((bar) => bar.value ?? 0));
  const base = high + 14;
  const up = (value: number) => base - (value / top) * high;
  const step = (WIDE - 130) / Math.max(1, bars.length);
  const drawn = bars.map((bar, index) => {
    const x = index * step + 3;
    const label = `<text x="${n(x + (step - 6) / 2)}" y="${base + 14}" text-anchor="middle">${text(bar.label)}</text>`;
    const middle = `x="${n(x + (step - 6) / 2)}" text-anchor="middle"`;
    if (bar.value === null)
      return `<path class="none" d="M${n(x)} ${base}h${n(step - 6)}"/><text ${middle} y="${base - 4}">unknown</text>${label}`;
    const inside = Math.min(bar.value, usual?.high ?? bar.value);
    const over =
      bar.value > inside
        ? `<rect class="over" x="${n(x)}" y="${n(up(bar.value))}" width="${n(step - 6)}" height="${n(up(inside) - up(bar.value))}"/>`
        : '';
    return `<rect class="in" x="${n(x)}" y="${n(up(inside))}" width="${n(step - 6)}" height="${n(base - up(inside))}"/>${over}<path class="cap" d="M${n(x)} ${n(up(bar.value))}h${n(step - 6)}"/><text ${middle} y="${n(base - up(inside) > 18 ? base - 5 : up(bar.value) - 4)}">${bar.value}${bar.partly ? '+' : ''}</text>${label}`;
  });
  const band = usual
    ? `<path class="dash" d="M0 ${n(up(usual.high))}h${WIDE - 128}"/><text x="${WIDE - 124}" y="${n(up(usual.high))}">band to ${usual.high} ${unit}</text><path class="dots" d="M0 ${n(up(usual.week))}h${WIDE - 128}"/><text x="${WIDE - 124}" y="${n(Math.max(up(usual.week), up(usual.high) + 13) + 4)}">usual week ${usual.week}</text>`
    : `<text x="${WIDE - 124}" y="${base - 20}">usual week not known yet</text>`;
  return figure(caption, alt, base + 20, `${drawn.join('')}${band}`);
}

const DASHES = ['', ' stroke-dasharray="6 3"', ' stroke-dasharray="2 3"'];

function painOf({ lines, from, to, alt, caption }: PainBlock): string {
  const high = 130;
  const base = high + 8;
  const across = (date: string) =>
    20 + (daysBetween(from, date) / Math.max(1, daysBetween(from, to))) * (WIDE - 200);
  const up = (value: number) => base - (value / 10) * high;
  const grid = [0, 5, 10]
    .map(
      (value) =>
        `<path class="grid" d="M16 ${n(up(value))}H${WIDE - 176}"/><text x="0" y="${n(up(value) + 4)}">${value}</text>`,
    )
    .join('');
  const six = `<path class="dash" d="M16 ${n(up(6))}H${WIDE - 176}"/><text x="22" y="${n(up(6) - 4)}">6: stop, see a clinician</text>`;
  const drawn = lines.map(({ name, points }, index) => {
    const strokes = points.flatMap((point, nth) => {
      const before = points[nth - 1];
      if (!before || daysBetween(before.date, point.date) > 7) return [];
      return [
        `<path class="line"${DASHES[index] ?? ''} d="M${n(across(before.date))} ${n(up(before.value))}L${n(across(point.date))} ${n(up(point.value))}"/>`,
      ];
    });
    const marks = points.map((point) => markOf(index, across(point.date), up(point.value)));
    const y = 14 + index * 18;
    return `${strokes.join('')}${marks.join('')}${markOf(index, WIDE - 166, y - 4)}<text x="${WIDE - 156}" y="${y}">${text(name)}</text>`;
  });
  const dates = `<text x="16" y="${base + 15}">${from}</text><text x="${WIDE - 176}" y="${base + 15}" text-anchor="end">${to}</text>`;
  return figure(caption, alt, base + 20, `${grid}${six}${drawn.join('')}${dates}`);
}

function markOf(index: number, x: number, y: number): string {
  if (index === 0) return `<circle class="full" cx="${n(x)}" cy="${n(y)}" r="3"/>`;
  if (index === 1) return `<rect class="hollow" x="${n(x - 3)}" y="${n(y - 3)}" width="6" height="6"/>`;
  return `<path class="hollow" d="M${n(x)} ${n(y - 4)}l4 7h-8z"/>`;
}

function figure(caption: string, alt: string, height: number, drawn: string): string {
  return `<figure><figcaption>${text(caption)}</figcaption><div class="wide" tabindex="0" role="region" aria-label="${text(caption)}"><svg viewBox="0 0 ${WIDE} ${height}" width="${WIDE}" height="${height}" role="img" aria-label="${text(alt)}">${drawn}</svg></div></figure>`;
}

const n = (value: number) => String(Math.round(value * 10) / 10);

const SIGNS: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

function text(said: string): string {
  return said.replace(/[&<>"']/g, (sign) => SIGNS[sign] ?? sign);
}
