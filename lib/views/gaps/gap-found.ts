import { tissueSideInWords } from '#lib/planning/gaps/body-state.ts';
import type { GapResult, WeighedDrill } from '#lib/planning/gaps/find-gaps.ts';
import type { GapContext } from '#lib/planning/gaps/gap-context.ts';
import { PART_STANDINGS, type PartStanding, type PartStandingName } from '#lib/planning/gaps/gap-types.ts';
import { intoSessions } from '#lib/planning/gaps/into-sessions.ts';
import { askedInWords } from '#lib/planning/gaps/standing-of-part.ts';
import { nameOf, whyLeft } from '#lib/planning/gaps/why-left.ts';
import { limitInWords, untilInWords } from '../limit-lines.ts';
import { lineInWords, partInWords, STANDING_WORDS, supportInWords, whyChosen } from './drill-words.ts';
import { listInWords } from './list-in-words.ts';

export type FoundPart = {
  key: string;
  part: string;
  asked: string;
  standing: PartStandingName;
  standingWords: string;
  sides: string[];
  /** By which chosen drills, for an open part. */
  coveredBy: string;
};
export type FoundDrill = {
  key: string;
  name: string;
  where: string;
  lines: string[];
  why: string[];
  notes: string[];
};
export type GapFound = {
  summary: string;
  parts: FoundPart[];
  drills: FoundDrill[];
  left: { key: string; part: string; why: string[] }[];
  aims: string[];
};

/** What the gap finder found, as the page says it: parts worst first, drills in the order of the ladders. */
export function gapFound(result: GapResult, context: GapContext): GapFound {
  const placed = intoSessions(result.chosen, result.room, context);
  const sessionsOf = (drill: WeighedDrill) =>
    placed.filter((one) => one.drill === drill).map(({ session }) => sessionInWords(session));
  return {
    summary: summaryOf(result),
    parts: PART_STANDINGS.flatMap((standing) =>
      result.parts.filter((part) => part.standing === standing).map((part) => foundPart(part, result)),
    ),
    drills: result.chosen.map((drill) => ({
      key: drill.option.key,
      name: [drill.option.ladder.name, supportInWords(drill.option.support)].filter(Boolean).join(', '),
      where: listInWords(sessionsOf(drill)),
      lines: drill.option.lines.map(lineInWords),
      why: whyChosen(drill, result.chosen),
      notes: notesOf(drill, result, context.date),
    })),
    left: result.left.map((part) => ({
      key: `${part.ask.ladder.id} ${part.seen.side}`,
      part: partInWords(part),
      why: whyLeft(part, result).map(({ drill, words, limit }) => {
        const said = limit
          ? `${words} (${limitInWords(limit)}, ${untilInWords(limit, context.date)})`
          : words;
        return drill ? `${nameOf(drill)} ${said.replace(/\.$/, '')}.` : said;
      }),
    })),
    aims: aimsOf(result),
  };
}

function foundPart({ ask, standing, sides }: PartStanding, { chosen }: GapResult): FoundPart {
  const by = chosen.filter(({ covers }) => covers.some(({ part }) => part.ask === ask));
  return {
    key: ask.ladder.id,
    part: ask.ladder.part,
    asked: askedInWords(ask.rung),
    standing,
    standingWords: STANDING_WORDS[standing],
    sides: sides.map(({ seen, words }) => (seen.side === 'both' ? words : `${seen.side}: ${words}`)),
    coveredBy: listInWords(by.map(({ option }) => option.ladder.name)),
  };
}

function summaryOf({ open, parts, chosen, left }: GapResult): string {
  const unknown = parts.filter(
    ({ standing, ask }) => standing === 'not-known' && ask.role !== 'mobility',
  ).length;
  const film =
    unknown > 0
      ? ` ${count(unknown, 'part')} ${unknown === 1 ? 'is' : 'are'} not known: film one slow lowering or test ${unknown === 1 ? 'it' : 'them'} first.`
      : '';
  if (open.length === 0) return `No part is open.${film}`;
  const openParts = new Set(open.map(({ ask }) => ask)).size;
  const drills = count(chosen.length, 'drill');
  const cover =
    left.length === 0 ? `${drills} cover${chosen.length === 1 ? 's' : ''} all of them` : leftWords();
  return `${count(openParts, 'part')} ${openParts === 1 ? 'is' : 'are'} open; ${cover}.${film}`;

  function leftWords(): string {
    const names = listInWords(left.map(partInWords));
    return `no plan covers all of them: ${drills} cover${chosen.length === 1 ? 's' : ''} what can be covered now, ${names} ${left.length === 1 ? 'is' : 'are'} left`;
  }
}

function notesOf(drill: WeighedDrill, { weighed }: GapResult, today: string): string[] {
  const { strain, change, option, cutBy } = drill;
  const loads = strain.slice(0, 3).map(({ key, load, state }) => {
    const why = [
      ...(state.pain > 0 ? [`pain ${state.pain} of 10`] : []),
      ...(state.overUsual > 0 ? [`week ${(1 + state.overUsual).toFixed(1)} x usual`] : []),
    ];
    return `Puts ${load.toFixed(0)} body-weight seconds a session on the ${tissueSideInWords(key)} (${why.join(', ')}).`;
  });
  return [
    ...(cutBy ? [`Fewer sets under a limit: ${limitInWords(cutBy)}, ${untilInWords(cutBy, today)}.`] : []),
    ...(option.oneBack ? [whyBack(drill, weighed)] : []),
    ...loads,
    ...(change.words ? [`${change.words.charAt(0).toUpperCase()}${change.words.slice(1)}.`] : []),
  ];
}

/** Why it is one rung back: the rung itself cannot be done now, or this one loads less. */
function whyBack({ option }: WeighedDrill, weighed: readonly WeighedDrill[]): string {
  const ahead = weighed.find((one) => one.option.ladder.id === option.ladder.id && !one.option.oneBack);
  return ahead?.out
    ? `One rung back: ${nameOf(ahead)} ${ahead.out.words.replace(/\.$/, '')}.`
    : 'One rung back from the last result: it loads less.';
}

function aimsOf({ score, room, weighed }: GapResult): string[] {
  const [left, drills, strain, change] = score;
  const kept = room
    .filter((one) => one.kept.length > 0)
    .map(
      (one) =>
        `${sessionInWords(one.session)} keeps ${listInWords(one.kept)} of other skills: room for ${one.room} more strength drills`,
    );
  return [
    `Looked at ${count(weighed.length, 'drill')}, each on its rung, one rung back and on the supports at hand; ${weighed.filter(({ out }) => out).length} cannot be done now.`,
    `Made smallest, in this order: parts left (${left}), drills (${drills}), load on sore or loaded tissues (${strain} body-weight seconds x points), change from the plan (${change}: 1 another rung, 2 a new drill).`,
    `At most four strength drills a session (common practice, no source)${kept.length > 0 ? `. ${asSentences(kept)}` : '.'}`,
  ];
}

function asSentences(parts: readonly string[]): string {
  return parts.map((part) => `${part.charAt(0).toUpperCase()}${part.slice(1)}.`).join(' ');
}

function sessionInWords(session: string): string {
  return session === 'short' ? 'the short session' : `session ${session}`;
}

function count(number: number, word: string): string {
  return `${number} ${word}${number === 1 ? '' : 's'}`;
}
