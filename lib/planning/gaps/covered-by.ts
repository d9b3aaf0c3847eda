import { factorsOf } from './drill-line.ts';
import type { DrillOption } from './drill-options.ts';
import { SERVES_TOO_FROM } from './gap-numbers.ts';
import type { Ask, GapRung, SideSeen } from './gap-types.ts';
import { trainingRung } from './training-rung.ts';

/** One thing to cover: an open part on one side. */
export type OpenPart = { ask: Ask; seen: SideSeen };

/** How a drill covers a part: it is the part's own, the same drill by its numbers, or loads the same at least as hard. */
export type CoverHow = 'own' | 'same-drill' | 'loads-the-same';

const STRENGTH = ['bent-arm-push', 'bent-arm-pull', 'straight-arm-push', 'straight-arm-pull'];

/**
 * How a drill covers an open part, if it does. Another part's drill covers it too when it is the same drill (family,
 * measure, weights, share, kit), or, for strength, of the same family, moving where the part moves, and loading every
 * tissue that the part's own drill loads with 0.3 or more at least 0.9 times as hard (share x weight, that side). Own
 * rule. Balance and ranges are particular: nothing but their own drill covers them.
 */
export function coversHow(
  option: DrillOption,
  { ask, seen }: OpenPart,
  loaded: number,
): CoverHow | undefined {
  const lines = option.lines.filter(
    ({ side }) => side === 'both' || seen.side === 'both' || side === seen.side,
  );
  if (lines.length === 0) return undefined;
  if (option.ladder.partId === ask.ladder.partId) return 'own';
  const own = trainingRung(ask.ladder, seen);
  const [line] = lines;
  if (!own || !line) return undefined;
  if (profileOf(line.rung) === profileOf(own)) return 'same-drill';
  if (line.rung.family !== own.family || !STRENGTH.includes(own.family)) return undefined;
  if (isMoving(own) && !isMoving(line.rung)) return undefined;
  const side = own.eachSide ? seen.side : 'both';
  const given = new Map(
    lines.flatMap((one) => factorsOf(one, option.support, null).map(({ key, factor }) => [key, factor])),
  );
  const asked = factorsOf({ rung: own, side }, null, null).filter(
    ({ tissue }) => (own.weights[tissue] ?? 0) >= loaded,
  );
  const asHard = asked.every(({ key, factor }) => (given.get(key) ?? 0) >= factor * SERVES_TOO_FROM);
  return asked.length > 0 && asHard ? 'loads-the-same' : undefined;
}

function profileOf({ family, measure, weights, share, equipment }: GapRung): string {
  const sorted = Object.entries(weights).sort(([a], [b]) => (a < b ? -1 : 1));
  return JSON.stringify([family, measure, sorted, share, [...equipment].sort()]);
}

function isMoving({ measure }: GapRung): boolean {
  return measure !== 'hold';
}
