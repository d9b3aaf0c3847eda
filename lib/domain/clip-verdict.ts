import type { HistorySet } from './history.ts';
import { type ClipVerdict, FAULTS, type Fault } from './vocabulary.ts';

/** What a coach saw of one set on film. */
export type SeenOnFilm = { verdict: ClipVerdict; faults: Fault[] };

/** Only who trained can tell of these: a clean film takes none of them away. */
const FELT: readonly Fault[] = ['stopped-by-pain'];

/**
 * A told set as it counts once a coach has seen it on film; what was told stays beside it in `onFilm.told`.
 * Clean: it is clean and without faults, but for what only the client can feel. Not clean: it is not clean, with the
 * faults of both. Cannot see: as told. Seen again, the newer verdict stands alone.
 */
export function withVerdict(set: HistorySet, { verdict, faults }: SeenOnFilm): HistorySet {
  const told = set.onFilm?.told ?? { clean: set.clean, faults: set.faults };
  const felt = told.faults.filter((fault) => FELT.includes(fault));
  const onFilm = { verdict, faults, told };
  if (verdict === 'cannot-see') return { ...set, ...told, onFilm };
  if (verdict === 'clean') return { ...set, clean: felt.length === 0 || told.clean, faults: felt, onFilm };
  const both = FAULTS.filter((fault) => faults.includes(fault) || told.faults.includes(fault));
  return { ...set, clean: false, faults: both, onFilm };
}

/** The set as the client told it, whatever a film showed. */
export function asTold({ onFilm, ...set }: HistorySet): HistorySet {
  return onFilm ? { ...set, ...onFilm.told } : set;
}

/** Of several verdicts about one film: not clean where one set was not, clean where one was, else that it cannot be seen. */
export function worstVerdict(verdicts: readonly ClipVerdict[]): ClipVerdict | null {
  const [first] = verdicts;
  if (first === undefined) return null;
  if (verdicts.includes('not-clean')) return 'not-clean';
  return verdicts.includes('clean') ? 'clean' : 'cannot-see';
}
