import type { ClientView, Day, TissueSide } from '#lib/checks/types.ts';
import { TISSUES, type Tissue } from '#lib/domain/vocabulary.ts';
import { BLOCK_DAYS, type ClientAxis, PAGE_DAYS } from './client-axis.ts';
import { usualOf } from './strip-usual.ts';
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
  usual: { week: number; low: number; high: number } | null;
  top: number;
  /** Said right of the line. */
  lines: { text: string; strong: boolean }[];
  /** Places of usual, high and now in shares of the height, 0 at the top. */
  height: number;
  summary: string;
  /** Over the usual week + 2 spreads in the last block. */
  isOver: boolean;
};
export type LoadView = { panels: LoadPanel[]; others: { title: string; said: string }[] };

const SHOWN = 4;
const SPREADS = 2;
const LONG_DAYS = 28;
const TALL = 132;
const LOW = 64;
const HEADROOM = 1.08;

/**
 * Load in blocks of 7 days counted back from the last one, against the usual week (median, two spreads each way).
 * First the whole session load (AU), then the tissues (BW s) a reason names, then those furthest above usual.
 */
export function loadView(view: ClientView, axis: ClientAxis, named: readonly Tissue[]): LoadView {
  const keys = TISSUES.flatMap((tissue) => [`${tissue}:left`, `${tissue}:right`] as TissueSide[]);
  const session = toPanel(
    view,
    { key: 'session', title: 'Session load', side: '', unit: 'AU in 7 days' },
    (day) => day.sessionLoad,
  );
  const tissues = keys
    .map((key) => {
      const { tissue, side } = partsOfTissueSide(key);
      const panel = toPanel(
        view,
        { key, title: TISSUE_WORDS[tissue], side, unit: 'BW s in 7 days' },
        (day) => (day.state === 'unknown' ? undefined : (day.tissueLoad[key] ?? 0)),
      );
      return { panel, isNamed: named.includes(tissue), ratio: ratioOf(panel) };
    })
    .filter(({ panel }) => panel.blocks.some((block) => (block.total ?? 0) > 0))
    .sort(
      (a, b) =>
        Number(b.isNamed) - Number(a.isNamed) || b.ratio - a.ratio || compare(a.panel.key, b.panel.key),
    );
  const shown = [session, ...tissues.slice(0, SHOWN - 1).map(({ panel }) => panel)];
  const tallest = shown.find((panel) => panel.isOver) ?? session;
  return {
    panels: shown.map((panel) => (panel === tallest ? { ...panel, height: TALL } : panel)),
    others: tissues.slice(SHOWN - 1).map(({ panel }) => ({
      title: `${panel.title}${panel.side ? `, ${panel.side}` : ''}`,
      said: panel.lines.map((line) => line.text).join('; '),
    })),
  };
}

type Named = { key: string; title: string; side: string; unit: string };

function toPanel(view: ClientView, named: Named, amountOf: (day: Day) => number | undefined): LoadPanel {
  const series = view.days.map((day) => (day.state === 'unknown' ? undefined : amountOf(day)));
  const usual = usualOf(
    view.days.map((day, index) => (day.state === 'off' || day.easy ? undefined : series[index])),
  );
  const high = usual ? usual.median + SPREADS * usual.spread : undefined;
  const lastDays = Array.from({ length: PAGE_DAYS }, (_, index) => series[series.length - PAGE_DAYS + index]);
  const blocks = Array.from({ length: PAGE_DAYS / BLOCK_DAYS }, (_, index) =>
    toBlock(lastDays.slice(index * BLOCK_DAYS, (index + 1) * BLOCK_DAYS), high),
  );
  const now = blocks.at(-1);
  const known = lastDays.slice(-LONG_DAYS).filter((value) => value !== undefined).length;
  const band = usual
    ? {
        week: usual.median,
        low: Math.max(0, usual.median - SPREADS * usual.spread),
        high: high ?? usual.median,
      }
    : null;
  const lines = linesOf({ now, band, known, unit: named.unit.split(' in ')[0] ?? '' });
  const name = `${named.title}${named.side ? `, ${named.side}` : ''}`;
  return {
    ...named,
    blocks,
    usual: band,
    top: Math.max(1, band?.high ?? 0, ...blocks.map((block) => block.total ?? 0)) * HEADROOM,
    lines,
    height: LOW,
    summary: `${name}: ${lines.map((line) => line.text).join('; ')}.`,
    isOver: (now?.over ?? 0) > 0,
  };
}

function toBlock(days: readonly (number | undefined)[], high: number | undefined): LoadBlock {
  const known = days.filter((value) => value !== undefined);
  if (known.length === 0) return { total: null, inside: 0, over: 0, knownDays: 0, printed: 'unknown' };
  const total = known.reduce((sum, value) => sum + value, 0);
  const over = high === undefined ? 0 : Math.max(0, total - high);
  return {
    total,
    inside: total - over,
    over,
    knownDays: known.length,
    printed: `${grouped(total)}${known.length < BLOCK_DAYS ? '+' : ''}`,
  };
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

function ratioOf(panel: LoadPanel): number {
  const total = panel.blocks.at(-1)?.total ?? 0;
  return panel.usual && panel.usual.week > 0 ? total / panel.usual.week : 0;
}

/** "1,180". */
export function grouped(value: number): string {
  return Math.round(value)
    .toString()
    .replace(/\B(?=(\d{3})+$)/g, ',');
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
