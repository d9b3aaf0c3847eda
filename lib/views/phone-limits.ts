import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { HistoryLimit, HistoryRung } from '#lib/domain/history.ts';
import { MEASURE_UNITS, SUPPORT_LABELS } from '#lib/domain/labels.ts';
import type { Support } from '#lib/domain/vocabulary.ts';
import { isInForce, type LimitEffect, limitOnItem, setsUnderLimit } from '#lib/planning/limit-on-item.ts';
import { limitInWords, untilInWords } from './limit-lines.ts';
import { type DrillSide, doseInWords, type PhoneDrill, type PhoneSession } from './phone-session.ts';

type Swap = { rungId: string; insteadId: string; support: Support | null };
export type UnderLimits = {
  date: string;
  limits: readonly HistoryLimit[];
  rungs: ReadonlyMap<string, HistoryRung>;
  swaps: readonly Swap[];
};

/** What holds for the client on a date, as the phone lists it. */
export function limitsInWords(limits: readonly HistoryLimit[], date: string): string[] {
  const lines = limits
    .filter((limit) => isInForce(limit, date))
    .map((limit) => `${limitInWords(limit)}, ${untilInWords(limit, date)} (${limit.who})`);
  return [...new Set(lines)];
}

/**
 * A session as the client's limits leave it: drills ruled out stay in their place with what may be done instead, drills
 * reduced have fewer sets. A drill of which one side is ruled out is shown as two. No limit in force: the session itself.
 */
export function limitSession(session: PhoneSession, under: UnderLimits): PhoneSession {
  if (!under.limits.some((limit) => isInForce(limit, under.date))) return session;
  const drills = session.drills.flatMap((drill) => limitDrill(drill, under));
  const planned = new Set(drills.filter((drill) => !drill.limit?.out).flatMap(placesOf));
  const isFree = (swap: PhoneDrill) => !placesOf(swap).some((place) => planned.has(place));
  return {
    ...session,
    drills: drills.map(({ limit, ...drill }) =>
      limit ? { ...drill, limit: { ...limit, swaps: limit.swaps.filter(isFree) } } : drill,
    ),
  };
}

/** Sets are told apart by rung and side: what the session has already is no swap. */
function placesOf({ sides }: PhoneDrill): string[] {
  return sides.map(({ rungId, side }) => `${rungId} ${side}`);
}

function limitDrill(drill: PhoneDrill, under: UnderLimits): PhoneDrill[] {
  const sides = drill.sides.map((side) => ({ side, effect: effectOn(side, drill.support, under) }));
  const kept = sides.filter(({ effect }) => effect.share > 0);
  const out = sides.filter(({ effect }) => effect.share <= 0);
  const cut = kept.find(({ effect }) => effect.limit !== null)?.effect.limit;
  const keptDrill: PhoneDrill = {
    ...drill,
    sides: kept.map(({ side, effect }) => cutSide(side, effect, drill)),
    ...(cut ? { limit: { words: limitInWords(cut), out: false, swaps: [] } } : {}),
  };
  if (out.length === 0) return [keptDrill];
  const [first] = out;
  const limit = first?.effect.limit;
  const outSides = out.map(({ side }) => side);
  const outDrill: PhoneDrill = {
    ...drill,
    key: kept.length > 0 ? `${drill.key} out` : drill.key,
    sides: outSides,
    limit: {
      words: limit ? limitInWords(limit) : '',
      out: true,
      swaps: swapsOf(drill, outSides, under),
    },
  };
  return kept.length > 0 ? [keptDrill, outDrill] : [outDrill];
}

function effectOn(side: DrillSide, support: Support | null, under: UnderLimits): LimitEffect {
  const rung = under.rungs.get(side.rungId);
  if (!rung) return { share: 1, limit: null };
  return limitOnItem(under.limits, { rung, side: side.side, support }, under.date, DEFAULT_LIMITS);
}

function cutSide(side: DrillSide, effect: LimitEffect, { unit }: PhoneDrill): DrillSide {
  const sets = setsUnderLimit(side.sets, effect);
  return { ...side, sets, dose: doseInWords({ ...side, sets, unit }) };
}

/** Swaps of the first side's rung that no limit touches on the sides they would work, each once. */
function swapsOf(drill: PhoneDrill, sides: DrillSide[], under: UnderLimits): PhoneDrill[] {
  const [first] = sides;
  const known = new Set<string>();
  return under.swaps.flatMap((swap) => {
    const rung = under.rungs.get(swap.insteadId);
    const key = `${swap.insteadId} ${swap.support ?? ''}`;
    if (!first || !rung || swap.rungId !== first.rungId || known.has(key)) return [];
    const instead = swapDrill(drill, sides, { rung, support: swap.support });
    if (!instead.sides.every((side) => effectOn(side, instead.support, under).share === 1)) return [];
    known.add(key);
    return [instead];
  });
}

type Instead = { rung: HistoryRung; support: Support | null };

/** The rung to do instead: as many sets as planned, its own pass mark; the same rung on a support keeps its dose. */
function swapDrill(drill: PhoneDrill, sides: DrillSide[], { rung, support }: Instead): PhoneDrill {
  const [first] = sides;
  const same = first?.rungId === rung.id;
  const unit = MEASURE_UNITS[rung.measure];
  const asked = rung.eachSide
    ? sides.flatMap((side) => (side.side === 'both' ? (['left', 'right'] as const) : [side.side]))
    : (['both'] as const);
  return {
    ...drill,
    key: `${drill.key} ${rung.id} ${support ?? ''}`,
    title: support ? SUPPORT_LABELS[support] : rung.name,
    rungsDiffer: false,
    measure: rung.measure,
    unit,
    faults: rung.faults,
    support,
    last: null,
    sides: same
      ? sides
      : asked.map((side) => {
          const dose = { sets: first?.sets ?? rung.pass.sets, target: rung.pass.target };
          const tries = rung.measure === 'made-tried' ? rung.pass.tries : null;
          return {
            ...dose,
            side,
            tries,
            rungId: rung.id,
            rung: rung.name,
            dose: doseInWords({ ...dose, tries, unit }),
          };
        }),
  };
}
