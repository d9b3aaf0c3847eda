import { CHECK_KINDS, type CheckKind } from '#lib/domain/vocabulary.ts';
import type { LimitId } from '../thresholds.ts';

/** Kinds whose outcomes are settled together: good news held back, load jumps hastened, reasons of one cause merged. */
const TOGETHER: readonly CheckKind[] = [
  'danger-sign',
  'pain-high',
  'pain-rising',
  'pain-lingering',
  'pain-after-ground',
  'load-jump',
  'new-hardest',
  'stacked-stress',
  'step-up-earned',
];

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

/**
 * Which kinds can say something else once these numbers change, with all that is settled together with them. `shared`:
 * days, weeks or usual values change for everything, so that nothing worked out before may be used again.
 */
export function kindsReading(ids: readonly LimitId[]): { kinds: readonly CheckKind[]; shared: boolean } {
  const found = new Set<CheckKind>();
  for (const id of ids) {
    const kind = kindOfLimit(id);
    if (kind === undefined) return { kinds: CHECK_KINDS, shared: true };
    found.add(kind);
    for (const other of READ_TOO[id.split('.')[0] ?? ''] ?? []) found.add(other);
  }
  if (TOGETHER.some((kind) => found.has(kind))) for (const kind of TOGETHER) found.add(kind);
  return { kinds: CHECK_KINDS.filter((kind) => found.has(kind)), shared: false };
}
