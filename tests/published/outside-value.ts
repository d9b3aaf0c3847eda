/**
 * Where the number comes from, as far as it was seen:
 * - `printed`: stands in the source as it stands here;
 * - `derived`: worked out from printed figures by the arithmetic in `how`;
 * - `memory`: said to stand in the source, not seen there; recomputed;
 * - `recomputed`: published data, result from another program (R, SciPy);
 * - `practice`: common practice, no source.
 */
export type Basis = 'printed' | 'derived' | 'memory' | 'recomputed' | 'practice';

/** A number from outside beside what this project makes of the same question. A printed column is one number. */
export type OutsideValue = {
  what: string;
  basis: Basis;
  /** Author or body, year, table, figure or page. */
  source: string;
  /** The arithmetic of a derived number. */
  how?: string;
  value: number | readonly number[];
  got: () => number | undefined | readonly (number | undefined)[];
  /** Largest difference allowed: half a unit of the last printed digit where nothing else is said. */
  within: number;
};

/** A number without its source, as written in a table of one source. */
export type Line = Omit<OutsideValue, 'source' | 'basis'> & Partial<Pick<OutsideValue, 'basis'>>;

/** Lines of one source. */
export function fromSource(source: string, basis: Basis, lines: readonly Line[]): OutsideValue[] {
  return lines.map((line) => ({ source, basis, ...line }));
}
