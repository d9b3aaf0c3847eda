import { TISSUES, type Tissue } from '#lib/domain/vocabulary.ts';
import type { TissueSide } from './types.ts';

type Side = 'left' | 'right';
type Place = { key: TissueSide; tissue: Tissue; side: Side };

/** Every tissue on each side, in the order of their names: the rows of a table of loads. */
export const TISSUE_SIDES: readonly Place[] = TISSUES.flatMap((tissue) =>
  (['left', 'right'] as const).map((side): Place => ({ key: `${tissue}:${side}`, tissue, side })),
).sort((a, b) => (a.key < b.key ? -1 : 1));

const ROWS = Object.fromEntries(
  TISSUES.map((tissue) => [tissue, { left: rowOf(tissue, 'left'), right: rowOf(tissue, 'right') }]),
) as Record<Tissue, Record<Side, { key: TissueSide; index: number }>>;

function rowOf(tissue: Tissue, side: Side) {
  const index = TISSUE_SIDES.findIndex((place) => place.tissue === tissue && place.side === side);
  return { key: `${tissue}:${side}` as const, index };
}

/** Name of a tissue on a side, and its row in `TISSUE_SIDES`. */
export function tissueRow(tissue: Tissue, side: Side): { key: TissueSide; index: number } {
  return ROWS[tissue][side];
}
