import type { WeighedDrill } from './find-gaps.ts';
import type { GapContext } from './gap-context.ts';
import type { Room } from './strength-room.ts';

/** A chosen drill in one session. A mobility drill stands in every session that has a drill it belongs to. */
export type PlacedDrill = { session: string; drill: WeighedDrill };

/**
 * Puts chosen drills into sessions: where the plan has their ladder already, if a strength drill still fits there; else
 * where most room is left for strength, and for the rest where fewest drills stand; the first session of equals. Then
 * the mobility beside the drills it belongs to.
 */
export function intoSessions(
  chosen: readonly WeighedDrill[],
  room: readonly Room[],
  { plan }: Pick<GapContext, 'plan'>,
): PlacedDrill[] {
  const left = new Map(room.map((one) => [one.session, one.room]));
  const placed: PlacedDrill[] = [];
  const count = (session: string) => placed.filter((one) => one.session === session).length;
  const inPlan = ({ option }: WeighedDrill) =>
    plan?.items.find((item) => option.ladder.rungs.some((rung) => rung.id === item.rungId))?.session;
  for (const drill of chosen.filter((one) => !isBeside(one, chosen))) {
    const open = room.filter(({ session }) => !drill.strength || (left.get(session) ?? 0) > 0);
    const best =
      open.find(({ session }) => session === inPlan(drill)) ??
      [...open].sort((a, b) =>
        drill.strength
          ? (left.get(b.session) ?? 0) - (left.get(a.session) ?? 0)
          : count(a.session) - count(b.session),
      )[0];
    if (!best) continue;
    placed.push({ session: best.session, drill });
    if (drill.strength) left.set(best.session, (left.get(best.session) ?? 0) - 1);
  }
  return inOrder([...placed, ...companions(chosen, placed, room)], room);
}

/** Mobility that belongs to another chosen drill stands where that one does. */
function isBeside({ gives }: WeighedDrill, chosen: readonly WeighedDrill[]): boolean {
  return chosen.some(({ needs }) => needs.some((tissue) => gives.includes(tissue)));
}

function companions(
  chosen: readonly WeighedDrill[],
  placed: readonly PlacedDrill[],
  room: readonly Room[],
): PlacedDrill[] {
  return chosen
    .filter((drill) => isBeside(drill, chosen))
    .flatMap((drill) => {
      const beside = room.filter(({ session }) =>
        placed.some(
          (one) => one.session === session && one.drill.needs.some((tissue) => drill.gives.includes(tissue)),
        ),
      );
      return beside.map(({ session }) => ({ session, drill }));
    });
}

/** Session by session; in each the mobility first, as it prepares. */
function inOrder(placed: readonly PlacedDrill[], room: readonly Room[]): PlacedDrill[] {
  return room.flatMap(({ session }) => {
    const here = placed.filter((one) => one.session === session);
    return [
      ...here.filter(({ drill }) => drill.gives.length > 0),
      ...here.filter(({ drill }) => drill.gives.length === 0),
    ];
  });
}
