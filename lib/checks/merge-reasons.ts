import type { Flagged, Outcome } from '#lib/domain/finding.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { compareLevels, compareTiers, URGENT_KINDS } from './urgency.ts';

/** Kinds that speak of one place that hurts, the graver first. */
const PAIN: readonly CheckKind[] = ['pain-high', 'pain-rising', 'pain-lingering', 'pain-after-ground'];
/** Kinds that speak of too much on one tissue, the graver first. */
const LOAD: readonly CheckKind[] = ['load-jump', 'stacked-stress', 'new-hardest'];

/**
 * Reasons with one cause on one tissue become one with two facts: pain kinds of one region and side, load kinds of one
 * tissue. The most urgent stays, at the highest level, points and tier of all, with the others as facts; the others
 * become clear and say of what they are part. Pain of 6 or more is never part of another: only what closes it does.
 */
export function mergeReasons(outcomes: readonly Outcome[]): Outcome[] {
  const groups = new Map<string, Flagged[]>();
  for (const outcome of outcomes) {
    if (outcome.status !== 'flagged') continue;
    for (const key of causesOf(outcome)) groups.set(key, [...(groups.get(key) ?? []), outcome]);
  }
  const into = new Map<Flagged, Flagged>();
  for (const group of groups.values()) {
    const [lead, ...others] = [...group].sort(byUrgency);
    for (const other of others)
      if (lead && lead.kind !== other.kind && !into.has(other)) into.set(other, lead);
  }
  return outcomes.map((outcome) => {
    if (outcome.status !== 'flagged') return outcome;
    const lead = into.get(outcome);
    if (lead && !into.has(lead)) {
      return { status: 'clear', kind: outcome.kind, subject: outcome.subject, why: `part of: ${lead.short}` };
    }
    const parts = [...into].filter(([, other]) => other === outcome).map(([part]) => part);
    return parts.length > 0 && !lead ? withParts(outcome, parts) : outcome;
  });
}

function causesOf({ kind, subject, evidence }: Flagged): string[] {
  if (PAIN.includes(kind)) return [`pain ${subject.key}`];
  if (!LOAD.includes(kind)) return [];
  const tissues =
    typeof evidence.tissues === 'string' ? evidence.tissues.split(',').filter((each) => each !== '') : [];
  const own = subject.tissue === undefined ? [] : [`${subject.tissue}:${subject.side ?? 'both'}`];
  return [...new Set([...tissues, ...own])].map((tissue) => `load ${tissue}`);
}

function byUrgency(a: Flagged, b: Flagged): number {
  const urgent = (one: Flagged) => (URGENT_KINDS.includes(one.kind) ? 0 : 1);
  return (
    urgent(a) - urgent(b) ||
    compareTiers(a.tier, b.tier) ||
    b.points - a.points ||
    graveness(a.kind) - graveness(b.kind)
  );
}

function graveness(kind: CheckKind): number {
  return [...PAIN, ...LOAD].indexOf(kind);
}

function withParts(lead: Flagged, parts: readonly Flagged[]): Flagged {
  const sorted = [...parts].sort(
    (a, b) => graveness(a.kind) - graveness(b.kind) || (a.subject.key < b.subject.key ? -1 : 1),
  );
  const names = new Set(lead.working.inputs.map((input) => input.name));
  const more = sorted
    .flatMap((part) => part.working.inputs)
    .filter(({ name }) => !names.has(name) && names.add(name));
  const ids = new Set(lead.working.thresholds.map((threshold) => threshold.id));
  const also = sorted
    .flatMap((part) => part.working.thresholds)
    .filter(({ id }) => !ids.has(id) && ids.add(id));
  const all = [lead, ...sorted];
  return {
    ...lead,
    level:
      all
        .map((each) => each.level)
        .sort(compareLevels)
        .at(-1) ?? lead.level,
    tier: all.map((each) => each.tier).sort(compareTiers)[0] ?? lead.tier,
    points: Math.max(...all.map((each) => each.points)),
    sentence: `${lead.sentence} Also: ${sorted.map((part) => part.short).join('; ')}.`,
    since: all.map((each) => each.since).sort()[0] ?? lead.since,
    evidence: { ...lead.evidence, also: sorted.map((part) => part.kind).join(', ') },
    working: {
      ...lead.working,
      inputs: [...lead.working.inputs, ...more],
      thresholds: [...lead.working.thresholds, ...also],
    },
  };
}
