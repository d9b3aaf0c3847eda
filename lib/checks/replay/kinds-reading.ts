import { CHECK_KINDS, type CheckKind } from '#lib/domain/vocabulary.ts';
import type { LimitId } from '../thresholds.ts';

/** Kinds that may be merged into one reason with each other: of one place that hurts, of one loaded tissue. */
const MERGED: readonly (readonly CheckKind[])[] = [
  ['danger-sign', 'pain-high', 'pain-rising', 'pain-lingering', 'pain-after-ground'],
  ['load-jump', 'new-hardest', 'stacked-stress'],
];
const GOOD_NEWS: CheckKind = 'step-up-earned';
/** Good news is held back by any of the others. */
const HELD_BACK: readonly CheckKind[] = [...MERGED.flat(), GOOD_NEWS];

/** Numbers of one kind that another reads too. */
const READ_TOO: Readonly<Partial<Record<string, readonly CheckKind[]>>> = {
  tooLittleTime: ['stalled'],
  goneQuiet: ['not-seen'],
  painRising: ['pain-after-ground'],
};

/** Numbers that more than one check reads, where not all do. `reason`: how long one stays, whatever the check says. */
const SHARED_BY: Readonly<Partial<Record<string, readonly CheckKind[]>>> = {
  coldStart: ['load-jump', 'new-hardest', 'stacked-stress', 'no-let-up'],
  grade: ['load-jump'],
  painCauses: MERGED.flat(),
  reason: [],
  score: ['step-up-earned', 'stalled', 'slipping'],
  usualPain: MERGED.flat(),
  week: ['load-jump', 'new-hardest', 'stacked-stress', 'no-let-up', 'return-too-fast'],
};

const KIND_OF_PREFIX = new Map(
  CHECK_KINDS.map((kind) => [kind.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase()), kind]),
);

/** The kind whose own number this is; undefined: more than one check reads it. */
export function kindOfLimit(id: LimitId): CheckKind | undefined {
  return KIND_OF_PREFIX.get(id.split('.')[0] ?? '');
}

export type Reading = {
  /** Kinds whose rules can say something else. */
  touched: readonly CheckKind[];
  /** Those, and all that may be merged with them. */
  settled: readonly CheckKind[];
  /** Those that decide whether good news is held back; empty: nothing touched does. */
  heldBack: readonly CheckKind[];
  /** The days themselves come out otherwise: the view must be built anew. All else is worked out per set of numbers. */
  shared: boolean;
};

/** What can be different once these numbers change. Pure. */
export function kindsReading(ids: readonly LimitId[]): Reading {
  const found = new Set<CheckKind>();
  let shared = false;
  let stays = false;
  for (const id of ids) {
    const prefix = id.split('.')[0] ?? '';
    const kind = kindOfLimit(id);
    shared ||= prefix === 'day';
    stays ||= prefix === 'reason';
    const own = kind === undefined ? undefined : [kind, ...(READ_TOO[prefix] ?? [])];
    for (const reader of own ?? SHARED_BY[prefix] ?? CHECK_KINDS) found.add(reader);
  }
  const touched = CHECK_KINDS.filter((kind) => found.has(kind));
  const groups = [...MERGED, ...(found.has(GOOD_NEWS) ? [HELD_BACK] : [])];
  const settled = new Set([
    ...found,
    ...groups.filter((group) => group.some((kind) => found.has(kind))).flat(),
  ]);
  if (stays) return { touched, settled: CHECK_KINDS, heldBack: [], shared };
  const holds = !settled.has(GOOD_NEWS) && MERGED.flat().some((kind) => found.has(kind));
  return {
    touched,
    settled: CHECK_KINDS.filter((kind) => settled.has(kind)),
    heldBack: holds ? HELD_BACK : [],
    shared,
  };
}
