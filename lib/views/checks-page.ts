import { CHECKS } from '#lib/checks/registry.ts';
import { kindOfLimit } from '#lib/checks/replay/kinds-reading.ts';
import { boundsOf } from '#lib/checks/thresholds/bounds.ts';
import { isLimitId, type LimitId, type Limits, limitsWith, THRESHOLDS } from '#lib/checks/thresholds.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';

export type NumberLine = {
  id: LimitId;
  meaning: string;
  unit: string;
  source: string;
  /** What stands in the field: in force in this scope, or of the version that was opened. */
  value: string;
  /** Without a change of this scope: the default, or the team's. */
  without: string;
  bounds: string;
  /** Why it cannot be changed; null: it can. */
  kept: string | null;
};
export type CheckLines = {
  key: string;
  title: string;
  question: string;
  /** "12 right to tell, 3 not needed"; empty: nobody said. */
  verdicts: string;
  /** It was seldom right to tell, often enough to say so. */
  look: boolean;
  numbers: NumberLine[];
  changed: number;
};
export type CheckGroup = { title: string; checks: CheckLines[] };

const GROUPS: readonly { title: string; kinds: readonly CheckKind[] }[] = [
  {
    title: 'Pain',
    kinds: ['danger-sign', 'pain-high', 'pain-rising', 'pain-lingering', 'pain-after-ground'],
  },
  {
    title: 'Too much',
    kinds: ['load-jump', 'new-hardest', 'stacked-stress', 'no-let-up', 'return-too-fast', 'too-many-goals'],
  },
  {
    title: 'Ladders',
    kinds: [
      'step-up-earned',
      'too-hard',
      'plan-outgrown',
      'stalled',
      'slipping',
      'too-little-time',
      'window-gap',
    ],
  },
  { title: 'Sides', kinds: ['side-gap', 'one-side-fault'] },
  {
    title: 'Contact and what is owed',
    kinds: [
      'gone-quiet',
      'fading',
      'question-waiting',
      'film-waiting',
      'plan-ending',
      'not-seen',
      'asked-no-answer',
      'limit-ending',
    ],
  },
];

/** What more than one check reads, by the first part of the name. */
const SHARED: readonly { prefixes: readonly string[]; title: string; question: string }[] = [
  {
    prefixes: ['grade'],
    title: 'Grade of a day',
    question: 'How much pain makes a day one to stop, to reduce, to be careful?',
  },
  {
    prefixes: ['usualPain', 'painCauses', 'soreMuscle'],
    title: 'Usual pain',
    question: 'What is usual for a place, and how far back is a cause looked for?',
  },
  {
    prefixes: ['week', 'day', 'coldStart'],
    title: 'Days and usual weeks',
    question: 'What counts as rest, as known, as a usual week, as the first weeks?',
  },
  {
    prefixes: ['ewma', 'monotony', 'tissue', 'score'],
    title: 'Figures of load and score',
    question: 'How are load and share of the pass mark worked out?',
  },
  {
    prefixes: ['reason', 'points'],
    title: 'Life of a reason',
    question: 'When does a reason close, reopen, count?',
  },
  {
    prefixes: ['betterSince'],
    title: 'Better since',
    question: 'How long is a step followed, and what counts as a change?',
  },
  { prefixes: ['forecast'], title: 'Forecast', question: 'How wide are the ranges of dates?' },
];

/** Under this share of reasons that were right to tell, after so many verdicts, a look at the numbers is suggested. */
const SELDOM = 1 / 3;
const SAID_OFTEN = 30;
/** Never made quieter because of verdicts. */
const NEVER_TUNED: readonly CheckKind[] = ['danger-sign', 'pain-high'];

type Shown = {
  /** In force without a change of this scope: the defaults, or the team's numbers. */
  without: Limits;
  /** What stands in the fields, over those. */
  changed: Partial<Limits>;
  verdicts: readonly { kind: CheckKind; right: number; notNeeded: number }[];
};

/** Every number that decides, by check, with what was said of the check's reasons. Pure. */
export function checkGroups({ without, changed, verdicts }: Shown): CheckGroup[] {
  const ids = Object.keys(THRESHOLDS).filter(isLimitId);
  const inFields = limitsWith({ ...without, ...changed });
  const lines = (wanted: (id: LimitId) => boolean) =>
    ids.filter(wanted).map((id) => toLine(id, without, inFields));
  const own = GROUPS.map(({ title, kinds }) => ({
    title,
    checks: kinds.flatMap((kind) => {
      const check = CHECKS.find((one) => one.kind === kind);
      if (!check) return [];
      const said = verdicts.find((one) => one.kind === kind);
      return toCheck(
        { key: kind, title: check.title, question: check.question, ...verdictWords(kind, said) },
        lines((id) => kindOfLimit(id) === kind),
      );
    }),
  }));
  const shared = SHARED.map(({ prefixes, title, question }) =>
    toCheck(
      { key: prefixes.join(' '), title, question, verdicts: '', look: false },
      lines((id) => prefixes.includes(id.split('.')[0] ?? '')),
    ),
  );
  return [...own, { title: 'Read by more than one check', checks: shared }];
}

function toCheck(about: Omit<CheckLines, 'numbers' | 'changed'>, numbers: NumberLine[]): CheckLines {
  return { ...about, numbers, changed: numbers.filter(({ value, without }) => value !== without).length };
}

function toLine(id: LimitId, without: Limits, inFields: Limits): NumberLine {
  const { meaning, unit, source } = THRESHOLDS[id];
  const { min, max, whole, kept, stricter } = boundsOf(id);
  return {
    id,
    meaning,
    unit,
    source,
    value: numberInWords(inFields[id]),
    without: numberInWords(without[id]),
    bounds: `${whole ? 'whole number, ' : ''}${min} to ${max}${stricter === undefined ? '' : ` (${stricter})`}`,
    kept: kept ?? null,
  };
}

/** As a field shows it: at most four decimals. */
export function numberInWords(value: number): string {
  return String(Math.round(value * 10_000) / 10_000);
}

function verdictWords(
  kind: CheckKind,
  said: { right: number; notNeeded: number } | undefined,
): Pick<CheckLines, 'verdicts' | 'look'> {
  if (!said) return { verdicts: '', look: false };
  const all = said.right + said.notNeeded;
  return {
    verdicts: `${said.right} right to tell, ${said.notNeeded} not needed`,
    look: !NEVER_TUNED.includes(kind) && all >= SAID_OFTEN && said.right / all < SELDOM,
  };
}

/** What a version changed, in words: "median gap: watch: 10 to 12 %". */
export function changesInWords(before: Partial<Limits>, after: Partial<Limits>, without: Limits): string[] {
  const ids = [...new Set([...Object.keys(before), ...Object.keys(after)])].filter(isLimitId).sort();
  return ids.flatMap((id) => {
    const [was, is] = [before[id] ?? without[id], after[id] ?? without[id]];
    if (was === is) return [];
    const { meaning, unit } = THRESHOLDS[id];
    return `${titleOf(id)}, ${meaning}: ${numberInWords(was)} to ${numberInWords(is)} ${unit}`;
  });
}

/** The check or the group that a number stands under. */
export function titleOf(id: LimitId): string {
  const kind = kindOfLimit(id);
  if (kind) return CHECKS.find((check) => check.kind === kind)?.title ?? kind;
  const prefix = id.split('.')[0] ?? '';
  return SHARED.find(({ prefixes }) => prefixes.includes(prefix))?.title ?? prefix;
}
