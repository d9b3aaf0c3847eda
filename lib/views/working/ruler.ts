import type { Flagged, Working } from '#lib/domain/finding.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';

type Threshold = Working['thresholds'][number];
type Evidence = Flagged['evidence'];
type MarkOf = { id: string; words: string; scale?: number };
type Scale = {
  unit: string;
  /** What the pointer stands for, before its number. */
  words: string;
  /** The number of tonight, out of the evidence. */
  value: (evidence: Evidence) => number | undefined;
  marks: readonly MarkOf[];
  /** The end of the scale where it is fixed. */
  end?: number;
};

export type RulerMark = { at: number; words: string; said: string };
export type Ruler = {
  unit: string;
  end: number;
  ticks: number[];
  value: { at: number; said: string };
  /** Every threshold that stands on this scale, smallest first. */
  marks: RulerMark[];
};

const PERCENT = 100;
const HEADROOM = 1.15;
const MOST_TICKS = 10;
const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

const numberOf =
  (name: string, scale = 1) =>
  (evidence: Evidence): number | undefined => {
    const value = evidence[name];
    return typeof value === 'number' ? value * scale : undefined;
  };

const share = (part: string, whole: string) => (evidence: Evidence) => {
  const [of, all] = [evidence[part], evidence[whole]];
  return typeof of === 'number' && typeof all === 'number' && all > 0 ? (of / all) * PERCENT : undefined;
};

/** On which scale a kind of reason is judged, with the thresholds that stand on it. Kinds without one are not here. */
const SCALES: Partial<Record<CheckKind, Scale>> = {
  'pain-high': {
    unit: 'of 10',
    words: 'pain',
    value: numberOf('value'),
    end: 10,
    marks: [
      { id: 'painHigh.clearAt', words: 'cleared by this or less' },
      { id: 'painHigh.from', words: 'high from here' },
    ],
  },
  'pain-rising': {
    unit: 'points added up',
    words: 'added up',
    value: (evidence) => numberOf('sum')(evidence),
    marks: [
      { id: 'painRising.watch', words: 'watch' },
      { id: 'painRising.act', words: 'act' },
    ],
  },
  'pain-lingering': {
    unit: '% of the check-ins',
    words: 'sore on',
    value: share('sore', 'checkIns'),
    end: PERCENT,
    marks: [{ id: 'painLingering.share', words: 'over this', scale: PERCENT }],
  },
  'pain-after-ground': {
    unit: 'of 10',
    words: 'wrist',
    value: numberOf('value'),
    end: 10,
    marks: [{ id: 'painAfterGround.atLeast', words: 'at least' }],
  },
  'load-jump': {
    unit: '× usual week',
    words: '7 days',
    value: numberOf('ratio'),
    marks: [
      { id: 'loadJump.weekRatio', words: 'watch, with bigger sessions' },
      { id: 'loadJump.toldRatio', words: 'watch, over the told week' },
      { id: 'loadJump.bigWeekRatio', words: 'watch, by itself' },
      { id: 'loadJump.actRatio', words: 'act' },
    ],
  },
  'new-hardest': {
    unit: '× hardest of the 28 days before',
    words: 'this week',
    value: ({ peak, before }) =>
      typeof peak === 'number' && typeof before === 'number' && before > 0 ? peak / before : undefined,
    marks: [{ id: 'newHardest.over', words: 'new from here' }],
  },
  'no-let-up': {
    unit: 'training days in a row',
    words: 'without rest',
    value: numberOf('daysWithoutRest'),
    marks: [
      { id: 'noLetUp.restDays', words: 'from here' },
      { id: 'noLetUp.restDaysUnder18', words: 'under 18, from here' },
    ],
  },
  'return-too-fast': {
    unit: 'days off',
    words: 'the break',
    value: numberOf('daysOff'),
    marks: [{ id: 'returnTooFast.fromDays', words: 'a break from here' }],
  },
  'too-many-goals': {
    unit: 'skills in focus',
    words: 'the plan',
    value: numberOf('skills'),
    marks: [{ id: 'tooManyGoals.skills', words: 'at most' }],
  },
  'too-hard': {
    unit: 'of the last training days',
    words: 'hard on',
    value: numberOf('hardDays'),
    marks: [{ id: 'tooHard.days', words: 'from here' }],
  },
  'plan-outgrown': {
    unit: 'days running',
    words: 'everything clean on',
    value: numberOf('days'),
    marks: [{ id: 'planOutgrown.days', words: 'from here' }],
  },
  stalled: {
    unit: '% of the pass mark',
    words: 'last scores',
    value: numberOf('score', PERCENT),
    end: PERCENT,
    marks: [{ id: 'stalled.scoreUnder', words: 'under this', scale: PERCENT }],
  },
  slipping: {
    unit: '% under before',
    words: 'last scores',
    value: numberOf('dropPercent'),
    marks: [
      { id: 'slipping.dropPercent', words: 'from here' },
      { id: 'slipping.balancePercent', words: 'balance holds: a row from here' },
    ],
  },
  'too-little-time': {
    unit: '% of the logged sessions',
    words: 'trained in',
    value: share('trained', 'planned'),
    end: PERCENT,
    marks: [{ id: 'tooLittleTime.share', words: 'under this', scale: PERCENT }],
  },
  'window-gap': {
    unit: '% apart',
    words: 'the edges',
    value: numberOf('share', PERCENT),
    end: PERCENT,
    marks: [{ id: 'windowGap.share', words: 'over this', scale: PERCENT }],
  },
  'side-gap': {
    unit: '% behind',
    words: 'median gap',
    value: numberOf('percent'),
    marks: [
      { id: 'sideGap.watchPercent', words: 'watch' },
      { id: 'sideGap.actPercent', words: 'act' },
    ],
  },
  'gone-quiet': {
    unit: 'days silent',
    words: 'silent for',
    value: numberOf('days'),
    marks: [
      { id: 'goneQuiet.watchDays', words: 'watch at the earliest' },
      { id: 'goneQuiet.actDays', words: 'act at the earliest' },
      { id: 'goneQuiet.neverCameDays', words: 'after the invitation' },
      { id: 'goneQuiet.neverStartedDays', words: 'after the first planned day' },
      { id: 'goneQuiet.firstMonthDays', words: 'in the first month' },
    ],
  },
  fading: {
    unit: '% of the training days expected',
    words: 'logged',
    value: share('trained', 'expected'),
    marks: [{ id: 'fading.share', words: 'under this', scale: PERCENT }],
  },
  'question-waiting': {
    unit: 'h waited',
    words: 'waited',
    value: numberOf('hours'),
    marks: [
      { id: 'questionWaiting.watchHours', words: 'watch' },
      { id: 'questionWaiting.actHours', words: 'act' },
    ],
  },
  'film-waiting': {
    unit: 'h waited',
    words: 'waited',
    value: numberOf('hours'),
    marks: [
      { id: 'filmWaiting.watchHours', words: 'watch' },
      { id: 'filmWaiting.actHours', words: 'act' },
    ],
  },
  'plan-ending': {
    unit: 'planned days left',
    words: 'left',
    value: numberOf('daysLeft'),
    marks: [{ id: 'planEnding.days', words: 'within this' }],
  },
  'not-seen': {
    unit: 'days',
    words: 'not looked at for',
    value: numberOf('days'),
    marks: [
      { id: 'notSeen.days', words: 'from here' },
      { id: 'notSeen.firstMonthDays', words: 'in the first month' },
    ],
  },
  'asked-no-answer': {
    unit: 'days',
    words: 'asked',
    value: numberOf('days'),
    marks: [{ id: 'askedNoAnswer.days', words: 'from here' }],
  },
  'limit-ending': {
    unit: 'days left',
    words: 'left',
    value: numberOf('daysLeft'),
    marks: [{ id: 'limitEnding.days', words: 'within this' }],
  },
  'step-up-earned': {
    unit: 'days with the pass mark met',
    words: 'met on',
    value: numberOf('met'),
    marks: [],
  },
};

/**
 * The scale of a reason with every threshold standing on it and tonight's number as a pointer. Undefined where the kind
 * is not judged on one scale (a yes, a test of two counts), or the number is not in the evidence.
 */
export function rulerOf(
  kind: CheckKind,
  evidence: Evidence,
  thresholds: readonly Threshold[],
): Ruler | undefined {
  const scale = SCALES[kind];
  const at = scale?.value(evidence);
  if (!scale || at === undefined) return undefined;
  const marks = scale.marks
    .flatMap((mark): RulerMark[] => {
      const found = thresholds.find((one) => one.id === mark.id);
      if (!found) return [];
      const place = found.value * (mark.scale ?? 1);
      return [{ at: place, words: mark.words, said: plain(place) }];
    })
    .sort((a, b) => a.at - b.at);
  if (marks.length === 0) return undefined;
  const highest = Math.max(at, ...marks.map((mark) => mark.at));
  const step = stepFor(scale.end ?? highest * HEADROOM);
  const end = scale.end ?? Math.ceil((highest * HEADROOM) / step) * step;
  const ticks = Array.from({ length: Math.round(end / step) + 1 }, (_, index) => Number(plain(index * step)));
  return {
    unit: scale.unit,
    end,
    ticks,
    value: { at, said: `${scale.words} ${plain(at)} ${scale.unit}` },
    marks,
  };
}

function stepFor(end: number): number {
  return STEPS.find((step) => end / step <= MOST_TICKS) ?? end;
}

/** One decimal from ten on, two below. */
function plain(value: number): string {
  return String(Number(value.toFixed(value >= 10 ? 1 : 2)));
}
