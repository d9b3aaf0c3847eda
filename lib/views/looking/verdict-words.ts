import { FAULT_LABELS } from '#lib/domain/labels.ts';
import type { ClipVerdict, Fault } from '#lib/domain/vocabulary.ts';

type Seen = { verdict: ClipVerdict; faults: readonly Fault[] };

/** "clean", "not clean: hips turn", "could not be seen". */
export function verdictInWords({ verdict, faults }: Seen): string {
  if (verdict === 'cannot-see') return 'could not be seen';
  if (verdict === 'clean') return 'clean';
  const named = faults.map((fault) => FAULT_LABELS[fault]).join(', ');
  return named ? `not clean: ${named}` : 'not clean';
}

/** The same to the client, who can film it again. */
export function verdictToClient(seen: Seen, angle: string | null): string {
  if (seen.verdict !== 'cannot-see') return verdictInWords(seen);
  return `could not be seen: film it again, please${angle ? `, ${angle}` : ''}`;
}

/** Faults of a ladder that a film can show: what only the client feels is not among them. */
export function faultsToSee(faults: readonly Fault[]): Fault[] {
  return faults.filter((fault) => fault !== 'stopped-by-pain');
}
