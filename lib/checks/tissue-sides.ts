import { TISSUES, type Tissue } from '#lib/domain/vocabulary.ts';
import type { TissueSide } from './types.ts';

type Place = { key: TissueSide; tissue: Tissue; side: 'left' | 'right' };

/** Every tissue on each side, in the order of their names: the rows of a table of loads. */
export const TISSUE_SIDES: readonly Place[] = TISSUES.flatMap((tissue) =>
  (['left', 'right'] as const).map((side): Place => ({ key: `${tissue}:${side}`, tissue, side })),
).sort((a, b) => (a.key < b.key ? -1 : 1));

const INDEXES = new Map(TISSUE_SIDES.map(({ key }, index) => [key, index]));

/** Row of a tissue and side in `TISSUE_SIDES`. */
export function indexOfTissueSide(key: TissueSide): number {
  return INDEXES.get(key) ?? -1;
}
