import type { Limits } from '#lib/checks/thresholds.ts';
import type { HistoryLimit } from '#lib/domain/history.ts';
import { kitMissing } from '#lib/domain/kit.ts';
import { limitOnItem } from '#lib/planning/limit-on-item.ts';
import { asksOfSkill, openingsUpTo } from '../gaps/asks-of-skill.ts';
import type { Ask, GapLadder, GapRung } from '../gaps/gap-types.ts';
import { isRange, isSameDrill, rungsOfDrill, sidesOf } from './same-drill.ts';
import { TEST_SETS, TESTS_A_LADDER } from './start-numbers.ts';
import type { StartTest } from './start-types.ts';

export type Aim = { skillId: string; aimRungId: string };
export type ProposeFacts = {
  library: readonly GapLadder[];
  kit: readonly string[];
  date: string;
  limits: readonly HistoryLimit[];
  numbers: Limits;
};

/** A test that could be asked. `out`: why it is not asked unless the coach wants it; `why`: what it decides. */
export type ProposedTest = StartTest & { ladder: GapLadder; rung: GapRung; why: string; out: string | null };

/**
 * The few tests that place a client for the skills aimed at: of every part they ask (see `asksOfSkill`), the drills
 * whose pass marks an opening names, with the first drill of the ladder before them and, where no opening names one,
 * the aim and one between; ranges once, and only those that an opening names. At most three drills a ladder, more only
 * where openings name more. What needs kit that is not at hand, or what a limit rules out, is left out and says why. Ranges first, then in the
 * order of the library, easiest first. Empty when no aim is a rung of its skill. Which drills: common practice, no source.
 */
export function proposeTests(aims: readonly Aim[], facts: ProposeFacts): ProposedTest[] {
  const asks = mergedAsks(aims, facts);
  const named = new Set(asks.flatMap((ask) => openingsUpTo(ask).flatMap(({ needsAll }) => needsAll.flat())));
  const proposed: ProposedTest[] = [];
  for (const ladder of facts.library) {
    const ask = asks.find((one) => one.ladder.id === ladder.id);
    for (const { rung, why, decides } of ask ? drillsToAsk(ask, named) : []) {
      if (!decides && proposed.some((one) => isAlike(one.rung, rung))) continue;
      proposed.push({ ...testOf(ladder, rung), ladder, rung, why, out: leftOut(rung, facts) });
    }
  }
  return [...proposed.filter(({ rung }) => isRange(rung)), ...proposed.filter(({ rung }) => !isRange(rung))];
}

/** The same drill in another ladder, by its numbers: it need not be asked twice. */
function isAlike(a: GapRung, b: GapRung): boolean {
  const numbers = ({ family, measure, weights, share, equipment }: GapRung) =>
    JSON.stringify([family, measure, Object.entries(weights).sort(), share, [...equipment].sort()]);
  return a.ladderId !== b.ladderId && numbers(a) === numbers(b);
}

/** The test of a rung's drill, whichever of its rungs is named. */
export function testOf(ladder: GapLadder, rung: GapRung): StartTest {
  const hardest = rungsOfDrill(ladder, rung).at(-1) ?? rung;
  return {
    ladderId: ladder.id,
    rungId: hardest.id,
    sets: setsOf(ladder, rung),
    film: hardest.needsFilm,
  };
}

/** As many as the drill's pass marks ask, up to three; tries as the pass mark counts them. */
function setsOf(ladder: GapLadder, rung: GapRung): number {
  if (isRange(rung)) return 1;
  const passes = rungsOfDrill(ladder, rung).map(({ pass }) => pass);
  if (rung.measure === 'made-tried') return Math.max(...passes.map(({ tries, target }) => tries ?? target));
  return Math.min(TEST_SETS, Math.max(...passes.map(({ sets }) => sets)));
}

/** Every part that one of the aims asks, at the hardest rung that any of them asks of it. */
function mergedAsks(aims: readonly Aim[], { library, kit }: ProposeFacts): Ask[] {
  const merged = new Map<string, Ask>();
  for (const aim of aims)
    for (const ask of asksOfSkill(library, { ...aim, kit })) {
      if (ask.role === 'mobility') continue;
      const known = merged.get(ask.ladder.id);
      if (!known || known.rung.position < ask.rung.position) merged.set(ask.ladder.id, ask);
    }
  return [...merged.values()];
}

type Drill = { rung: GapRung; why: string; decides: boolean };

function drillsToAsk({ ladder, rung: asked, role }: Ask, named: ReadonlySet<string>): Drill[] {
  const upTo = ladder.rungs.filter((one) => one.position <= asked.position);
  const drills = upTo.filter((one, at) => !upTo.slice(0, at).some((other) => isSameDrill(one, other)));
  const decides = (one: GapRung) =>
    upTo.filter((rung) => rung.key !== null && named.has(rung.key) && isSameDrill(rung, one));
  const chosen = new Map<GapRung, string>();
  for (const drill of drills) {
    const [first] = decides(drill);
    if (first) chosen.set(drill, 'An opening asks for it.');
  }
  const [first] = drills;
  const last = drills.find((one) => isSameDrill(one, asked));
  const middle = drills[Math.floor((drills.length - 1) / 2)];
  const deciding = new Set(chosen.keys());
  const fill = (drill: GapRung | undefined, why: string) => {
    if (drill && !chosen.has(drill) && chosen.size < TESTS_A_LADDER) chosen.set(drill, why);
  };
  // One easier drill is asked before what decides, unless that itself is among the first two.
  if (chosen.size === 0 || Math.min(...[...chosen.keys()].map((one) => drills.indexOf(one))) > 1)
    fill(first, 'Where the ladder begins.');
  if (role === 'aim' || deciding.size === 0) fill(last, role === 'aim' ? 'The aim.' : 'The last rung asked.');
  if (deciding.size === 0 && drills.length > 3) fill(middle, 'Halfway to the rung asked.');
  return drills
    .filter((one) => chosen.has(one))
    .map((rung) => ({ rung, why: chosen.get(rung) ?? '', decides: deciding.has(rung) }));
}

function leftOut(rung: GapRung, { kit, limits, date, numbers }: ProposeFacts): string | null {
  const missing = kitMissing(rung.equipment, kit);
  if (missing) return `Needs ${missing}, which is not at hand.`;
  const held = sidesOf(rung).every((side) => limitOnItem(limits, { rung, side }, date, numbers).share <= 0);
  return held && limits.length > 0 ? 'Ruled out by a limit.' : null;
}
