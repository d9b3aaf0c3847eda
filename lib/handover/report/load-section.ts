import { TISSUE_LABELS, tissuesOfRegion } from '#lib/checks/tissues.ts';
import { TISSUES, type Tissue } from '#lib/domain/vocabulary.ts';
import { loadView } from '#lib/views/client-load.ts';
import type { TissueWeek, Week } from '../weeks.ts';
import type { BarsBlock, Block } from './blocks.ts';
import type { ReportInput } from './input.ts';
import { day, heading, number, table, tableOr, text } from './say.ts';
import { sorePlaces } from './sore-places.ts';

const WEEKS_DRAWN = 12;
const WEEKS_LISTED = 26;
const TISSUES_SHOWN = 3;

/** Session load of the last twelve weeks as bars, with the band of the usual week. */
export function loadBars({ weeks, view, limits }: ReportInput): BarsBlock {
  const shown = weeks.load.slice(-WEEKS_DRAWN);
  const usual = loadView(view, [], limits).panels[0]?.usual ?? null;
  const band = usual && {
    low: Math.round(usual.low),
    week: Math.round(usual.week),
    high: Math.round(usual.high),
  };
  const last = shown.at(-1);
  const said = shown.map((week) => (week.sessionLoadAu === null ? 'unknown' : week.sessionLoadAu)).join(', ');
  return {
    kind: 'bars',
    caption: 'Session load in blocks of 7 days (effort 0-10 x minutes, AU)',
    alt: `Bars of session load, the oldest first: ${said}.${last ? ` The last block ends ${day(last.to)}.` : ''}`,
    unit: 'AU',
    bars: shown.map((week) => ({
      label: day(week.to).slice(0, -5),
      value: week.sessionLoadAu,
      partly: week.knownDays < 7,
    })),
    usual: band,
  };
}

/** Load by week, and for the tissues of sore places the work in sets and seconds. */
export function loadSection(input: ReportInput): Block[] {
  const { weeks } = input;
  const listed = weeks.load.slice(-WEEKS_LISTED).reverse();
  const sore = [...new Set(sorePlaces(input).flatMap((place) => tissuesOfRegion(place.region)))];
  const shown = (sore.length > 0 ? sore : mostLoaded(weeks.tissues)).slice(0, TISSUES_SHOWN);
  return [
    heading(2, 'Load by week'),
    text(
      'Session load is effort (0-10) times minutes, in arbitrary units (AU). Load of a tissue is counted in body-weight seconds (BW s): seconds under load, times the share of body weight on that hand, times how much the drill asks of the tissue (0-1). A week ends on the day named; a week with unknown days is a lower bound.',
      'small',
    ),
    tableOr(
      'nothing is known.',
      table(
        'Session load by week',
        'load_by_week.csv',
        ['Week to', 'Days known#', 'Days trained#', 'Session load, AU#'],
        listed.map((week) => [
          day(week.to),
          number(week.knownDays),
          number(week.trainedDays),
          number(week.sessionLoadAu),
        ]),
        older(weeks.load.length - listed.length),
      ),
    ),
    ...shown.flatMap((tissue) => tissueTable(weeks.tissues, weeks.load, tissue, sore.includes(tissue))),
  ];
}

function tissueTable(
  rows: readonly TissueWeek[],
  weeks: readonly Week[],
  tissue: Tissue,
  sore: boolean,
): Block[] {
  const listed = weeks.slice(-WEEKS_LISTED).reverse();
  const of = (week: Week, side: 'left' | 'right') =>
    rows.find((row) => row.to === week.to && row.tissue === tissue && row.side === side);
  const cells = listed
    .filter((week) => of(week, 'left') || of(week, 'right'))
    .map((week) => [
      day(week.to),
      ...(['left', 'right'] as const).flatMap((side) => {
        const row = of(week, side);
        return [
          number(row?.sets),
          number(row?.hardSets),
          number(row?.seconds),
          number(row?.bodyWeightSeconds),
        ];
      }),
    ]);
  if (cells.length === 0) return [];
  return [
    table(
      `Work by week: ${TISSUE_LABELS[tissue]}`,
      'tissue_by_week.csv',
      ['Week to', 'Left sets#', 'hard#', 'seconds#', 'BW s#', 'Right sets#', 'hard#', 'seconds#', 'BW s#'],
      cells,
      `${sore ? 'Belongs to a sore place. ' : ''}Hard: sets of drills that ask 0.8 or more of it. A week without work of it is left out. ${older(weeks.length - listed.length) ?? ''}`.trim(),
    ),
  ];
}

function mostLoaded(rows: readonly TissueWeek[]): Tissue[] {
  const total = (tissue: Tissue) =>
    rows.filter((row) => row.tissue === tissue).reduce((sum, row) => sum + row.bodyWeightSeconds, 0);
  return TISSUES.filter((tissue) => total(tissue) > 0).sort((a, b) => total(b) - total(a));
}

function older(weeks: number): string | undefined {
  return weeks > 0 ? `${weeks} earlier weeks stand in the CSV.` : undefined;
}
