import { canonicalJson } from '#lib/domain/canonical-json.ts';
import type { Flagged } from '#lib/domain/finding.ts';

type Judged = Pick<Flagged, 'level' | 'tier' | 'points' | 'evidence'>;

/** One text for what a reason says tonight: level, tier, points and all numbers used. Equal text, nothing new. */
export function fingerprintOf({ level, tier, points, evidence }: Judged): string {
  return canonicalJson({ level, tier, points, evidence });
}

/** How bad, inside one level, as the rule says it in `evidence.severity`; undefined where the rule does not say. */
export function severityOf(fingerprint: string): number | undefined {
  const found = /"severity":(-?[\d.]+)/.exec(fingerprint)?.[1];
  return found === undefined ? undefined : Number(found);
}
