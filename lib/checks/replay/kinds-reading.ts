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
  /** Days, weeks or usual values change for everything: nothing worked out before may be used again. */
  shared: boolean;
};

/** What can be different once these numbers change. Pure. */
export function kindsReading(ids: readonly LimitId[]): Reading {
  const found = new Set<CheckKind>();
  for (const id of ids) {
    const kind = kindOfLimit(id);
    if (kind === undefined) return { touched: CHECK_KINDS, settled: CHECK_KINDS, heldBack: [], shared: true };
    found.add(kind);
    for (const other of READ_TOO[id.split('.')[0] ?? ''] ?? []) found.add(other);
  }
  const touched = CHECK_KINDS.filter((kind) => found.has(kind));
  const groups = [...MERGED, ...(found.has(GOOD_NEWS) ? [HELD_BACK] : [])];
  const settled = new Set([
    ...found,
    ...groups.filter((group) => group.some((kind) => found.has(kind))).flat(),
  ]);
  const holds = !settled.has(GOOD_NEWS) && MERGED.flat().some((kind) => found.has(kind));
  return {
    touched,
    settled: CHECK_KINDS.filter((kind) => settled.has(kind)),
    heldBack: holds ? HELD_BACK : [],
    shared: false,
  };
}
