import type { Fact } from '#lib/domain/finding.ts';
import { rounded, whole } from './in-numbers.ts';
import type { BiggerSessions, HeavyTissue, MoreSets } from './load-causes.ts';
import type { LoadFigures } from './load-figures.ts';
import type { LimitId } from './thresholds.ts';
import { TISSUE_LABELS } from './tissues.ts';
import { spreadOf } from './usual-week.ts';
import { plainNumber } from './words.ts';

export type Jump = {
  figures: LoadFigures;
  tissues: HeavyTissue[];
  /** Told usual week, in the first weeks only. */
  told: number | undefined;
  sessions: BiggerSessions | undefined;
  /** The largest 7-day total before, when this week is far over it. */
  largest: number | undefined;
};

const DOUBT =
  'This describes change, not what will happen. Ratios of load have been criticised: the week is part of what it is divided by, small weeks make large ratios, and a trial that steered by them found no difference (Impellizzeri 2020, Lolli 2019, Dalen-Lorentsen 2021).';

/** "The week is **1.5 × usual** (2,340 AU against 1,560) because the last three sessions were all bigger; 28 of 28 days known." */
export function jumpSentence(jump: Jump, ratio: number | undefined): string {
  const { week, known28, usual } = jump.figures;
  const days = `${known28.known} of ${known28.of} days known`;
  if (jump.told !== undefined) {
    return `The last 7 days are **${plainNumber(week.total / jump.told)} × the week told at the start** (${whole(week.total)} AU against ${whole(jump.told)}); ${days}.`;
  }
  if (!jump.sessions && jump.largest === undefined) return tissueSentence(jump, days);
  const against = usual.enough ? ` (${whole(week.total)} AU against ${whole(usual.usual)})` : '';
  const much = ratio === undefined ? 'far over usual' : `${plainNumber(ratio)} × usual`;
  return `The week is **${much}**${against} because ${causesInWords(jump)}; ${days}.`;
}

function tissueSentence(jump: Jump, days: string): string {
  const heavy = jump.tissues.find(({ cause }) => cause);
  if (!heavy) return `The week is over usual; ${days}.`;
  return `Load on ${placeOf(heavy)} is **${plainNumber(heavy.ratio)} × usual** this week because ${causesInWords(jump)}; ${days}.`;
}

/** The first visible cause, in words: sessions, sets of a drill, or the whole week. The others are in the working. */
function causesInWords(jump: Jump): string {
  return allCauses(jump)[0] ?? 'the total is bigger';
}

/** Every visible cause, the most telling first. */
export function allCauses(jump: Jump): string[] {
  const causes: string[] = [];
  if (jump.told !== undefined) causes.push('the total is over what was told at the start');
  if (jump.sessions) causes.push(`the last ${jump.sessions.count} sessions were all bigger`);
  for (const { drill, sets, usual } of causingDrills(jump)) {
    causes.push(`${drill.name} had ${sets.join(' and ')} sets, usually ${plainNumber(usual)}`);
  }
  if (jump.largest !== undefined) {
    causes.push(`it is far over the largest week of the 8 before (${whole(jump.largest)} AU)`);
  }
  return causes;
}

/** One short line: what to bring back first. */
export function jumpStep(jump: Jump): string {
  const [first] = causingDrills(jump);
  return first
    ? `Bring the next week back toward usual, ${first.drill.name} first`
    : 'Bring the next week back toward usual';
}

function causingDrills(jump: Jump): MoreSets[] {
  return [
    ...new Map(
      jump.tissues.flatMap(({ cause }) => (cause ? [[cause.drill.ladderId, cause] as const] : [])),
    ).values(),
  ];
}

function placeOf({ tissue, side }: HeavyTissue): string {
  return side === 'both' ? TISSUE_LABELS[tissue] : `${TISSUE_LABELS[tissue]}, ${side}`;
}

const USED: LimitId[] = [
  'loadJump.weekRatio',
  'loadJump.sessionEach',
  'loadJump.sessionMean',
  'loadJump.tissueRatio',
  'loadJump.setsEach',
  'loadJump.setsMean',
  'loadJump.bigWeekRatio',
  'loadJump.largestRatio',
  'loadJump.floorAu',
  'loadJump.floorBws',
  'loadJump.actRatio',
];

/** Numbers, formula and doubt of the finding. */
export function jumpWorking(jump: Jump) {
  const { figures } = jump;
  const ids: LimitId[] = jump.told === undefined ? USED : ['loadJump.toldRatio', 'loadJump.floorAu'];
  return {
    inputs: [
      { name: '7-day total', value: Math.round(figures.week.total), unit: 'AU' },
      ...(jump.told === undefined ? [] : [{ name: 'told usual week', value: jump.told, unit: 'AU' }]),
      ...usualFacts(figures),
      ...ratioFacts(figures),
      ...allCauses(jump).map((words, at): Fact => ({ name: `cause ${at + 1}`, value: words, unit: '' })),
      ...jump.tissues.map(
        (heavy): Fact => ({
          name: `${placeOf(heavy)}, 7 days against usual ${whole(heavy.usual)}`,
          value: rounded(heavy.total),
          unit: 'BW s',
        }),
      ),
    ],
    formula:
      '7-day total over the usual week (median of up to 8 ordinary weeks among the last 10, ending 7 days ago), and a visible cause: the last sessions, sets of a drill, or the largest week before.',
    thresholds: ids,
    daysKnown: { known: figures.known28.known, of: figures.known28.of },
    doubt: DOUBT,
  };
}

function usualFacts({ usual }: LoadFigures): Fact[] {
  if (!usual.enough)
    return [{ name: 'ordinary weeks known', value: usual.weeks, unit: `of ${usual.needed}` }];
  return [
    { name: 'usual week', value: Math.round(usual.usual), unit: 'AU' },
    { name: 'spread of usual weeks', value: Math.round(spreadOf(usual)), unit: 'AU' },
    { name: 'ordinary weeks in it', value: usual.weeks, unit: 'weeks' },
  ];
}

function ratioFacts(figures: LoadFigures): Fact[] {
  const facts: [string, number | undefined, string][] = [
    ['week over the mean of the 3 before', figures.uncoupled, '×'],
    ['week over the mean of all 4', figures.coupled, '×'],
    ['mean day, weighted to the last 7', figures.ewmaShort, 'AU'],
    ['mean day, weighted to the last 28', figures.ewmaLong, 'AU'],
    ['change against the week before', figures.weekToWeekPercent, '%'],
    ['monotony', 'monotony' in figures.monotony ? figures.monotony.monotony : undefined, ''],
    ['strain', 'monotony' in figures.monotony ? figures.monotony.strain : undefined, 'AU'],
  ];
  return facts.map(([name, value, unit]) => ({
    name,
    value: value === undefined ? 'no number' : Math.round(value * 100) / 100,
    unit: value === undefined ? '' : unit,
  }));
}
