import { MEASURE_UNITS } from '#lib/domain/labels.ts';
import { NEAR_RANGE, NEAR_SHARE, SORE_FROM } from './gap-numbers.ts';
import {
  type Ask,
  type GapRung,
  PART_STANDINGS,
  type PartStanding,
  type PartStandingName,
  type SideSeen,
  type SideStanding,
} from './gap-types.ts';

/**
 * Where the client stands in a part against the rung asked. Covered: the pass mark done clean, or a harder rung; near:
 * from three quarters of it, or done but not clean, hurried or with pain 3 and more; open: less, a rung further down, or
 * the film shows that it drops; not known: neither film nor result. With nothing seen at all, each side is not known.
 */
export function standingOfPart(ask: Ask, seen: readonly SideSeen[]): PartStanding {
  const sides = seen.map((one) => standingOfSide(ask, one));
  const worst = PART_STANDINGS.find((name) => sides.some(({ standing }) => standing === name));
  return { ask, standing: worst ?? 'not-known', sides };
}

export function standingOfSide(ask: Ask, seen: SideSeen): SideStanding {
  const rung = ask.ladder.rungs.find((one) => one.id === seen.rungId);
  const bare = rung ? byResult(ask.rung, rung, seen) : byFilm(seen);
  const held = heldBack(bare.standing, seen);
  return {
    seen,
    standing: held.standing,
    share: rung?.id === ask.rung.id ? shareOfPass(ask.rung, seen) : undefined,
    rungsBelow: rung && Math.max(0, ask.rung.position - rung.position),
    words: [bare.words, ...held.words].join('; '),
  };
}

/**
 * Share (0-1) of the pass mark of a rung; undefined without a result. Ranges: 1 when reached, else undefined. Tries:
 * good ones per try against those asked.
 */
export function shareOfPass(rung: GapRung, { sets, value }: SideSeen): number | undefined {
  if (value === null) return undefined;
  const { pass, measure } = rung;
  if (measure === 'range-up') return value >= pass.target ? 1 : undefined;
  if (measure === 'range-down') return value <= pass.target ? 1 : undefined;
  if (measure === 'made-tried') {
    const tries = sets ?? pass.tries ?? pass.target;
    return Math.min(1, (value * (pass.tries ?? pass.target)) / (tries * pass.target));
  }
  return (Math.min(sets ?? pass.sets, pass.sets) * Math.min(value, pass.target)) / (pass.sets * pass.target);
}

type Said = { standing: PartStandingName; words: string };

function byResult(asked: GapRung, rung: GapRung, seen: SideSeen): Said {
  const below = asked.position - rung.position;
  if (below < 0) return { standing: 'covered', words: `on a harder rung, ${rung.name}` };
  if (below > 0)
    return { standing: 'open', words: `${below} ${below === 1 ? 'rung' : 'rungs'} below, on ${rung.name}` };
  if (seen.value === null) return { standing: 'open', words: 'on this rung, no result yet' };
  const share = shareOfPass(asked, seen);
  const done = `${resultInWords(rung, seen)} of ${passInWords(rung)}`;
  if (asked.measure === 'range-up' || asked.measure === 'range-down') {
    const short = Math.abs(asked.pass.target - seen.value);
    if (share === 1) return { standing: 'covered', words: done };
    const standing = short <= NEAR_RANGE[asked.measure] ? 'near' : 'open';
    return { standing, words: `${done}: ${round(short)} ${unitOf(asked)} short` };
  }
  const percent = `${Math.floor((share ?? 0) * 100)} % of the pass mark`;
  if ((share ?? 0) >= 1) return { standing: 'covered', words: `${done}: the pass mark` };
  return { standing: (share ?? 0) >= NEAR_SHARE ? 'near' : 'open', words: `${done}: ${percent}` };
}

function byFilm({ film }: SideSeen): Said {
  if (film === 'steady') return { standing: 'covered', words: 'steady on film, no result' };
  if (film === 'hurried') return { standing: 'near', words: 'no result' };
  if (film === 'drops') return { standing: 'open', words: 'no result' };
  return { standing: 'not-known', words: 'no film and no result' };
}

/** What takes away from a result: a film, a fault, pain. */
function heldBack(
  standing: PartStandingName,
  seen: SideSeen,
): { standing: PartStandingName; words: string[] } {
  const words: string[] = [];
  let at = standing;
  const atMost = (most: PartStandingName, why: string) => {
    words.push(why);
    if (PART_STANDINGS.indexOf(at) > PART_STANDINGS.indexOf(most)) at = most;
  };
  if (seen.rungId !== null && seen.clean === false) atMost('near', 'not clean');
  if (seen.film === 'hurried') atMost('near', 'hurried or wavering on film');
  if (seen.film === 'drops') atMost('open', 'drops through on film');
  if (seen.film === 'steady' && seen.rungId !== null) words.push('steady on film');
  if ((seen.pain ?? 0) >= SORE_FROM) atMost('near', `pain ${seen.pain} of 10`);
  return { standing: at, words };
}

/** "3 x 20 s", "8 of 10", "160 °". */
function passInWords({ pass, ...rung }: GapRung): string {
  if (rung.measure === 'made-tried') return `${pass.target} made of ${pass.tries ?? pass.target}`;
  const amount = `${pass.target} ${unitOf(rung)}`;
  return rung.measure === 'range-up' || rung.measure === 'range-down' ? amount : `${pass.sets} x ${amount}`;
}

/** A rung with what it asks: "Toe float: 5 x 3 s"; a range whose name says its number only by its name. */
export function askedInWords(rung: GapRung): string {
  const isRange = rung.measure === 'range-up' || rung.measure === 'range-down';
  const saysIt = isRange && rung.name.includes(String(Math.abs(rung.pass.target)));
  return saysIt ? rung.name : `${rung.name}: ${passInWords(rung)}`;
}

function resultInWords(rung: GapRung, { sets, value }: SideSeen): string {
  if (rung.measure === 'made-tried') return `${value} made of ${sets ?? rung.pass.tries ?? rung.pass.target}`;
  const amount = `${value} ${unitOf(rung)}`;
  if (rung.measure === 'range-up' || rung.measure === 'range-down') return amount;
  return `${sets ?? rung.pass.sets} x ${amount}`;
}

function unitOf({ measure }: Pick<GapRung, 'measure'>): string {
  return MEASURE_UNITS[measure] || 'reps';
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
