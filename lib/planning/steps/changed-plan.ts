import { isOfSide } from '#lib/checks/set-result.ts';
import type { HistoryPlanItem, HistoryRung } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { isLineOf, tidied } from './change-rung.ts';

type Items = readonly HistoryPlanItem[];
type Rungs = ReadonlyMap<string, HistoryRung>;
export type RungChange = {
  rung: HistoryRung;
  side: Side;
  /** `up`: the easier half of a pyramid has done its work; `back`: the harder half waits; `stay`: both stay. */
  way: 'up' | 'back' | 'stay';
  /** What comes in the place of a line. */
  change: (item: HistoryPlanItem) => HistoryPlanItem[];
};
export type ChangedPlan = {
  items: HistoryPlanItem[];
  /** Rungs of halves of a pyramid that go out with the change. */
  out: string[];
};

/**
 * The lines of a plan with those of one rung changed. Two rungs of one ladder that are trained together (a pyramid)
 * change together: going up the easier half goes out, going back the harder; a half that stays is paired with what came
 * in the place of its partner. A line of a rung that was there already gives way to the changed one, on its side only.
 */
export function changedPlan(
  items: Items,
  rungs: Rungs,
  { rung, side, way, change }: RungChange,
): ChangedPlan {
  const old = items.filter((item) => isLineOf(item, rung, side));
  const fresh = new Map(old.map((item) => [item, change(item)]));
  const leaves = (item: HistoryPlanItem) =>
    old.filter((one) => isPair(item, one) && isLeaving(rungs.get(item.rungId), rung, way));
  const out = new Set<string>();
  const kept = items.flatMap((item): HistoryPlanItem[] => {
    const made = fresh.get(item);
    if (made) return made;
    const gone = leaves(item);
    if (gone.length > 0) out.add(item.rungId);
    const covers = [...fresh.values()]
      .flat()
      .filter((one) => one.session === item.session && one.rungId === item.rungId);
    return without(item, [...gone, ...covers]).map((one) => ({ ...one, ...pairedAnew(one, fresh) }));
  });
  const made = new Set([...fresh.values()].flat());
  const paired = kept.map((item) =>
    made.has(item) && !item.pairedWith ? { ...item, ...pairOf(item, kept) } : item,
  );
  return { items: tidied(paired), out: [...out] };
}

function isLeaving(partner: HistoryRung | undefined, rung: HistoryRung, way: RungChange['way']): boolean {
  if (!partner || way === 'stay') return false;
  return way === 'up' ? partner.position < rung.position : partner.position > rung.position;
}

function isPair(a: HistoryPlanItem, b: HistoryPlanItem): boolean {
  return meets(a, b) && (a.pairedWith === b.rungId || b.pairedWith === a.rungId);
}

function meets(a: HistoryPlanItem, b: HistoryPlanItem): boolean {
  return a.session === b.session && isOfSide(a, b.side);
}

/** What is left of a line when others take its place on their sides. */
function without(item: HistoryPlanItem, others: Items): HistoryPlanItem[] {
  const taken = others.map((one) => one.side);
  if (taken.length === 0) return [item];
  const sides: Side[] = item.side === 'both' ? ['left', 'right'] : [item.side];
  return sides
    .filter((side) => !taken.includes('both') && !taken.includes(side))
    .map((side) => ({ ...item, side }));
}

/** A half that stays, of a pyramid whose other half came onto one other rung. */
function pairedAnew(
  item: HistoryPlanItem,
  fresh: ReadonlyMap<HistoryPlanItem, HistoryPlanItem[]>,
): Pick<HistoryPlanItem, 'pairedWith'> {
  for (const [old, made] of fresh) {
    const [only] = made.filter((one) => meets(one, item));
    if (made.length > 0 && only && isPair(item, old)) return { pairedWith: only.rungId };
  }
  return { pairedWith: item.pairedWith };
}

/** The half that names this one, so that each names the other. */
function pairOf(item: HistoryPlanItem, items: Items): Pick<HistoryPlanItem, 'pairedWith'> {
  const other = items.find((one) => one.pairedWith === item.rungId && meets(one, item));
  return { pairedWith: other?.rungId ?? item.pairedWith };
}
