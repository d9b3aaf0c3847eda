import { kitNeeded } from '#lib/domain/kit.ts';
import { easySets, weekKind } from '#lib/planning/easy-week.ts';
import { isWithoutKit } from '#lib/planning/without-kit.ts';

type Rung = { rungId: string; rung: string };
type Item<Stand extends Rung> = Rung & {
  side: 'both' | 'left' | 'right';
  sets: number;
  target: number | null;
  support: string | null;
  pairedWith: string | null;
  equipment: string[];
  noKit: (Stand & { eachSide: boolean }) | null;
};
type Weeks = { easyWeeks: string[]; testWeeks: string[]; noKitWeeks: string[] };

/**
 * Planned lines as they are done on a date: half the sets in an easy week; without kit what needs none, the stand-in of
 * the rest at its pass mark, or nothing. A stand-in
 * stands once, and not where the plan has the rung anyway.
 */
export function itemsOnDate<Stand extends Rung, Line extends Item<Stand>>(
  items: readonly Line[],
  weeks: Weeks,
  date: string,
): Line[] {
  const easy = weekKind(weeks, date) === 'easy';
  const sized = easy ? items.map((item) => ({ ...item, sets: easySets(item.sets) })) : [...items];
  if (!isWithoutKit(weeks, date)) return sized;
  const place = ({ rungId, side }: Line) => `${rungId} ${side}`;
  const stay = new Set(sized.filter(({ equipment }) => kitNeeded(equipment).length === 0).map(place));
  const stood = new Set<string>();
  return sized.flatMap((item) => {
    const done = withoutKit<Stand, Line>(item);
    if (!done || done === item) return done ? [done] : [];
    if (stay.has(place(done)) || stood.has(place(done))) return [];
    stood.add(place(done));
    return [done];
  });
}

function withoutKit<Stand extends Rung, Line extends Item<Stand>>(item: Line): Line | undefined {
  if (kitNeeded(item.equipment).length === 0) return item;
  if (!item.noKit) return undefined;
  const side = item.noKit.eachSide ? item.side : 'both';
  return { ...item, ...item.noKit, side, target: null, support: null, pairedWith: null };
}

/** What the client is told about the week of a date; empty: a week as planned. */
export function weekInWords(weeks: Weeks, date: string): string[] {
  const kind = weekKind(weeks, date);
  return [
    ...(kind === 'easy' ? ['An easy week: half the sets, everything else as it was.'] : []),
    ...(kind === 'test' ? ['A test week: show what you can do, rested.'] : []),
    ...(isWithoutKit(weeks, date) ? ['A week without kit: only what needs a floor and a wall.'] : []),
  ];
}
