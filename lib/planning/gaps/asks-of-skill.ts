import type { Support } from '#lib/domain/vocabulary.ts';
import type { Ask, GapLadder, GapOpening, GapRung } from './gap-types.ts';
import { mobilityAskedBy, mobilityGivenBy } from './mobility-tissues.ts';

type Wanted = { skillId: string; aimRungId: string; kit: readonly string[] };
type Place = { ladder: GapLadder; rung: GapRung };

/**
 * What a skill asks of each of its parts for an aim: the aim itself; the other parts of the skill that come before it,
 * each at the rung that an opening names or else at its last; what the openings of all these ask of other skills; and
 * the mobility that belongs to them. In the order of the library, the skill's own parts first. Openings that a support
 * at hand makes up for ask nothing. Empty when the aim is no rung of the skill.
 */
export function asksOfSkill(library: readonly GapLadder[], wanted: Wanted): Ask[] {
  const aim = placeOf(library, (rung) => rung.id === wanted.aimRungId);
  if (!aim || aim.ladder.skillId !== wanted.skillId) return [];
  const asks = new Map<string, Ask>();
  const ask = (place: Place, role: Ask['role'], why: string) => {
    const known = asks.get(place.ladder.id);
    if (known && known.rung.position >= place.rung.position) return;
    asks.set(place.ladder.id, { ...place, role: known?.role ?? role, why: known?.why ?? why });
    for (const opening of openingsUpTo(place)) {
      if (opening.orOnSupports.some((support) => isAtHand(support, wanted.kit))) continue;
      for (const needed of opening.needsAll) {
        const next = leastAsking(library, needed);
        if (next) ask(next, next.ladder.skillId === wanted.skillId ? 'part' : 'opening', opening.words);
      }
    }
  };
  ask(aim, 'aim', 'The aim.');
  for (const ladder of partsBefore(library, aim)) {
    const rung = ladder.rungs.at(-1);
    if (rung && !asks.has(ladder.id))
      ask({ ladder, rung }, 'part', 'A part of the skill. No opening names a rung: the last one is asked.');
  }
  return inOrder(library, [...asks.values(), ...mobilityOf(library, [...asks.values()])]);
}

/** Openings of the rungs of a ladder up to and with this one. */
export function openingsUpTo({ ladder, rung }: Place): GapOpening[] {
  const keys = ladder.rungs.filter((one) => one.position <= rung.position).map((one) => one.key);
  return ladder.openings.filter((opening) => keys.includes(opening.opens));
}

/** Hands can be turned out anywhere; the other supports are kit. */
export function isAtHand(support: Support, kit: readonly string[]): boolean {
  return support === 'hands-turned-out' || kit.includes(support);
}

/** Ladders of the skill before the aim's that do not themselves open only from the aim's ladder on. */
function partsBefore(library: readonly GapLadder[], aim: Place): GapLadder[] {
  const own = library.filter((ladder) => ladder.skillId === aim.ladder.skillId);
  const before = own.slice(
    0,
    own.findIndex((ladder) => ladder.id === aim.ladder.id),
  );
  const fromAim = new Set(aim.ladder.rungs.map((rung) => rung.key));
  return before.filter(
    (ladder) =>
      !ladder.openings.some(({ needsAll }) => needsAll.some((any) => any.every((key) => fromAim.has(key)))),
  );
}

/** Of rungs of which any will do, the one with the fewest openings before it; the first of equals. */
function leastAsking(library: readonly GapLadder[], keys: readonly string[]): Place | undefined {
  const places = keys.flatMap((key) => placeOf(library, (rung) => rung.key === key) ?? []);
  const fewest = Math.min(...places.map((place) => openingsUpTo(place).length));
  return places.find((place) => openingsUpTo(place).length === fewest);
}

/** Mobility ladders for tissues that the asked rungs load and that no asked range prepares yet. */
function mobilityOf(library: readonly GapLadder[], asks: readonly Ask[]): Ask[] {
  const given = new Set(asks.flatMap(({ ladder }) => mobilityGivenBy(ladder)));
  return library.flatMap((ladder): Ask[] => {
    if (asks.some((ask) => ask.ladder.id === ladder.id)) return [];
    const prepares = mobilityGivenBy(ladder).filter((tissue) => !given.has(tissue));
    const heaviest = asks
      .filter(({ rung }) => mobilityAskedBy(rung).some((tissue) => prepares.includes(tissue)))
      .map(({ rung, ladder: of }) => ({
        of,
        weight: Math.max(...prepares.map((tissue) => rung.weights[tissue] ?? 0)),
      }))
      .sort((a, b) => b.weight - a.weight)[0];
    const [tissue] = prepares;
    if (!heaviest || !tissue) return [];
    const rung =
      ladder.rungs.find((one) => prepares.some((each) => (one.weights[each] ?? 0) >= heaviest.weight)) ??
      ladder.rungs.at(-1);
    return rung
      ? [{ ladder, rung, role: 'mobility', why: `Mobility that belongs to ${heaviest.of.part}.` }]
      : [];
  });
}

function inOrder(library: readonly GapLadder[], asks: readonly Ask[]): Ask[] {
  const group = (ask: Ask) =>
    ['aim', 'part', 'opening', 'mobility'].indexOf(ask.role === 'aim' ? 'part' : ask.role);
  const place = (ask: Ask) => library.findIndex((ladder) => ladder.id === ask.ladder.id);
  return [...asks].sort((a, b) => group(a) - group(b) || place(a) - place(b));
}

function placeOf(library: readonly GapLadder[], is: (rung: GapRung) => boolean): Place | undefined {
  for (const ladder of library) {
    const rung = ladder.rungs.find(is);
    if (rung) return { ladder, rung };
  }
  return undefined;
}
