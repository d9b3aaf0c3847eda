import { type LoadSeries, loadsOf } from '#lib/checks/load-series.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import { spreadOf, totalUpTo, usualWeek } from '#lib/checks/usual-week.ts';
import type { Tissue } from '#lib/domain/vocabulary.ts';
import { BLOCK_DAYS, PAGE_DAYS } from './client-axis.ts';
import { loadFiguresSaid } from './load-figures-said.ts';
import { partsOfTissueSide, TISSUE_WORDS } from './tissue-words.ts';

export type LoadBlock = {
  /** Total of the known days; null: no day of the block is known. */
  total: number | null;
  /** The part up to the usual week + 2 spreads, and what lies above. */
  inside: number;
  over: number;
  knownDays: number;
  /** "640", "640+" with unknown days, "unknown". */
  printed: string;
};
export type LoadPanel = {
  key: string;
  title: string;
  side: string;
  unit: string;
  blocks: LoadBlock[];
  /** What is printed at the foot of each block. */
  labels: { key: string; text: string; onInk: boolean }[];
  usual: { week: number; low: number; high: number } | null;
  top: number;
  /** Said right of the line. */
  lines: { text: string; strong: boolean }[];
  height: number;
  summary: string;
  /** Every other figure of this load, in words. */
  figures: string[];
  /** Over the usual week + 2 spreads in the last block. */
  isOver: boolean;
};
export type LoadView = {
  panels: LoadPanel[];
  others: { title: string; said: string; figures: string[] }[];
  /** What lies above its usual week, in one sentence. */
  summary: string;
};

const SHOWN = 4;
const NAMED_OVER = 3;
const SPREADS = 2;
const LONG_DAYS = 28;
const TALL = 132;
const LOW = 64;
const HEADROOM = 1.08;

/**
 * Load in blocks of 7 days counted back from the last one, against the usual week (median, two spreads each way).
 * First the whole session load (AU), then the tissues (BW s) a reason names, then those furthest above usual.
 */
export function loadView(view: ClientView, named: readonly Tissue[], limits: Limits): LoadView {
  const loads = loadsOf(view);
  const session = toPanel(
    view,
    { key: 'session', title: 'Session load', side: '', unit: 'AU', series: loads.session },
    limits,
  );
  const tissues = sidesTogether(
    [...loads.tissues].map(([key, series]) => {
      const { tissue, side } = partsOfTissueSide(key);
      return toPanel(view, { key, title: TISSUE_WORDS[tissue], side, unit: 'BW s', series }, limits);
    }),
  )
    .filter((panel) => panel.blocks.some((block) => (block.total ?? 0) > 0))
    .map((panel) => ({ panel, rank: rankOf(panel, named, limits) }))
    .sort((a, b) => b.rank - a.rank);
  const shown = [session, ...tissues.slice(0, SHOWN - 1).map(({ panel }) => panel)];
  const tallest = shown.find((panel) => panel.isOver) ?? session;
  return {
    summary: summaryOf([session, ...tissues.map(({ panel }) => panel)]),
    panels: shown.map((panel) => (panel === tallest ? { ...panel, height: TALL } : panel)),
    others: tissues.slice(SHOWN - 1).map(({ panel }) => ({
      title: `${panel.title}${panel.side ? `, ${panel.side}` : ''}`,
      said: panel.lines.map((line) => line.text).join('; '),
      figures: panel.figures,
    })),
  };
}

function summaryOf(panels: readonly LoadPanel[]): string {
  const over = panels.filter((panel) => panel.isOver).map(nameOf);
  const known = panels.filter((panel) => panel.usual !== null).length;
  if (known === 0) return 'No usual week is known yet, so nothing is held against one.';
  if (over.length === 0) return 'Nothing lies over its usual week in the last 7 days.';
  const [first = '', ...rest] = over;
  const named = [first.charAt(0).toUpperCase() + first.slice(1), ...rest].slice(0, NAMED_OVER).join('; ');
  const more = over.length > NAMED_OVER ? `; and ${over.length - NAMED_OVER} more` : '';
  return `${named}${more}: over the usual week in the last 7 days.`;
}

function nameOf({ title, side }: LoadPanel): string {
  return `${title.charAt(0).toLowerCase()}${title.slice(1)}${side ? `, ${side}` : ''}`;
}

type Named = { key: string; title: string; side: string; unit: string; series: LoadSeries };

function toPanel(view: ClientView, named: Named, limits: Limits): LoadPanel {
  const { series, unit, ...names } = named;
  const usual = usualWeek(view, series, limits);
  const band = usual.enough
    ? {
        week: usual.usual,
        low: Math.max(0, usual.usual - SPREADS * spreadOf(usual)),
        high: usual.usual + SPREADS * spreadOf(usual),
      }
    : null;
  const last = view.days.length - 1;
  const count = PAGE_DAYS / BLOCK_DAYS;
  const blocks = Array.from({ length: count }, (_, index) =>
    toBlock(series, last - BLOCK_DAYS * (count - 1 - index), band?.high),
  );
  const now = blocks.at(-1);
  const lines = linesOf({ now, band, known: totalUpTo(series, last, LONG_DAYS).known, unit });
  const name = `${named.title}${named.side ? `, ${named.side}` : ''}`;
  return {
    ...names,
    unit: `${unit} in ${BLOCK_DAYS} days`,
    blocks,
    labels: blocks.map((block, index) => ({
      key: `${named.key} ${index}`,
      text: block.printed,
      onInk: block.inside < block.over / 4,
    })),
    usual: band,
    top: Math.max(1, band?.high ?? 0, ...blocks.map((block) => block.total ?? 0)) * HEADROOM,
    lines,
    height: LOW,
    summary: `${name}: ${lines.map((line) => line.text).join('; ')}.`,
    figures: loadFiguresSaid(view, series, unit, limits),
    isOver: (now?.over ?? 0) > 0,
  };
}

function toBlock(series: LoadSeries, end: number, high: number | undefined): LoadBlock {
  const { total, known } = totalUpTo(series, end, BLOCK_DAYS);
  if (known === 0) return { total: null, inside: 0, over: 0, knownDays: 0, printed: 'unknown' };
  const over = high === undefined ? 0 : Math.max(0, total - high);
  const printed = `${grouped(total)}${known < BLOCK_DAYS ? '+' : ''}`;
  return { total, inside: total - over, over, knownDays: known, printed };
}

function linesOf(about: {
  now: LoadBlock | undefined;
  band: LoadPanel['usual'];
  known: number;
  unit: string;
}): LoadPanel['lines'] {
  const { now, band, known, unit } = about;
  const knownDays = { text: `${known} of ${LONG_DAYS} days known`, strong: false };
  if (!now || now.total === null) return [{ text: 'last 7 days unknown', strong: true }, knownDays];
  const total = `${now.knownDays < BLOCK_DAYS ? 'at least ' : ''}${grouped(now.total)} ${unit}`;
  if (!band) return [{ text: `${total}; usual week not known yet`, strong: true }, knownDays];
  const where =
    now.total > band.high
      ? 'over the usual week'
      : now.total < band.low
        ? 'under the usual week'
        : 'inside the usual week';
  const ratio = band.week > 0 ? `, ${(now.total / band.week).toFixed(2)} x` : '';
  return [
    { text: `${total}${ratio}, ${where}`, strong: true },
    { text: `usual week ${grouped(band.week)}, band to ${grouped(band.high)}`, strong: false },
    knownDays,
  ];
}

/** Left and right of a tissue as one panel where every block prints the same. */
function sidesTogether(panels: readonly LoadPanel[]): LoadPanel[] {
  const same = (a: LoadPanel, b: LoadPanel) =>
    a.title === b.title && a.labels.every((label, index) => label.text === b.labels[index]?.text);
  return panels
    .filter(
      (panel) => !(panel.side === 'right' && panels.some((one) => one.side === 'left' && same(one, panel))),
    )
    .map((panel) => {
      const both = panel.side === 'left' && panels.some((one) => one.side === 'right' && same(one, panel));
      if (!both) return panel;
      const side = 'left and right, each';
      return { ...panel, side, summary: panel.summary.replace(', left:', `, ${side}:`) };
    });
}

const NAMED_RANK = 2_000_000_000;
const OVER_RANK = 1_000_000_000;

/** Named by a reason first, then above the usual week with a sum worth a word, then the largest. */
function rankOf(panel: LoadPanel, named: readonly Tissue[], limits: Limits): number {
  const total = panel.blocks.at(-1)?.total ?? 0;
  const isNamed = named.some((tissue) => TISSUE_WORDS[tissue] === panel.title);
  const isOver = panel.isOver && total >= limits['loadJump.floorBws'];
  return (isNamed ? NAMED_RANK : 0) + (isOver ? OVER_RANK : 0) + total;
}

/** "1,180". */
export function grouped(value: number): string {
  return Math.round(value)
    .toString()
    .replace(/\B(?=(\d{3})+$)/g, ',');
}
