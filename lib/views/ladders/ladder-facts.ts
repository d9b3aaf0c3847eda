import { limitTouches } from '#lib/checks/limits-on-rung.ts';
import type { HistoryLimit } from '#lib/domain/history.ts';
import { FAULT_LABELS, SUPPORT_LABELS } from '#lib/domain/labels.ts';
import { type Side, TISSUES } from '#lib/domain/vocabulary.ts';
import {
  type DrillState,
  drillOf,
  type LadderState,
  liveRungs,
  type RungState,
  type SwapState,
} from '#lib/planning/ladders/ladder-state.ts';
import { passMarkInWords } from '#lib/planning/ladders/pass-mark.ts';
import { TISSUE_WORDS } from '../tissue-words.ts';
import { openingInWords } from './opening-in-words.ts';

/** A client with this ladder: where they stand on it and what of it is planned for them now or soon. */
export type LadderPerson = {
  clientId: string;
  name: string;
  standsOn: { rungId: string; side: Side }[];
  planned: { rungId: string; side: Side }[];
  /** Whether their newest assessment asks about this ladder. */
  assessed: boolean;
  /** In force or to come: only under a limit are swaps offered. */
  limits: readonly HistoryLimit[];
};

/** Names of rungs of any ladder, by id. */
export type RungNames = ReadonlyMap<string, string>;

/** What one client meets of a ladder, as words by question. A question whose words differ after an edit touches them. */
export type Facts = Map<string, { rung: string; what: string; words: string; kind: FactKind }>;

/** What reads the fact: the checks and the phone, the swaps offered under a limit, the gap finder. */
export type FactKind = 'check' | 'swap' | 'opening';

/** What this client meets of the ladder: the rungs they stand on, those planned, and what ladder and drill say about them. */
export function ladderFacts(state: LadderState, person: LadderPerson, names: RungNames = new Map()): Facts {
  const facts: Facts = new Map();
  const say: Say = (rung, what, words, kind = 'check') =>
    facts.set(`${rung.id} ${what}`, { rung: rung.name, what, words, kind });
  for (const { rungId } of person.standsOn) {
    const rung = state.rungs.find((one) => one.id === rungId);
    if (!rung) continue;
    sayOfDrill(state, rung, say);
    say(rung, 'pass mark', markOf(state, rung));
    say(rung, 'film to pass', rung.needsFilm ? 'needed' : 'not needed');
    say(rung, 'usual time', weeksInWords(rung.usualWeeks));
    say(rung, 'next rung', nextInWords(state, rung));
    say(rung, 'what clean means', cleanOf(state, rung));
    say(rung, 'faults to name', state.faults.map((fault) => FAULT_LABELS[fault]).join(', '));
  }
  for (const { rungId } of person.planned) {
    const rung = state.rungs.find((one) => one.id === rungId);
    if (rung) sayOfDrill(state, rung, say);
  }
  for (const { rungId } of [...person.standsOn, ...person.planned]) {
    const rung = state.rungs.find((one) => one.id === rungId);
    if (rung) sayOfSwaps({ state, person, names }, rung, say);
  }
  for (const rung of rungsToOpen(state, person))
    say(rung, 'opens with', openingOf(state, rung, names), 'opening');
  return facts;
}

type Say = (rung: RungState, what: string, words: string, kind?: FactKind) => void;

/** What is offered instead, to those whom a limit on one of the tissues of the drill can keep from it. */
function sayOfSwaps(
  { state, person, names }: { state: LadderState; person: LadderPerson; names: RungNames },
  rung: RungState,
  say: Say,
): void {
  const weights = drillOf(state, rung)?.weights ?? {};
  const loaded = TISSUES.filter((tissue) => (weights[tissue] ?? 0) > 0);
  if (!person.limits.some((limit) => limitTouches(limit, { loaded }))) return;
  for (const tissue of TISSUES) {
    const swaps = rung.swaps.filter((swap) => swap.tissue === tissue);
    const what = `swaps to spare ${TISSUE_WORDS[tissue].toLowerCase()}:`;
    say(rung, what, swaps.map((swap) => swapInWords(swap, names)).join(' or ') || 'none', 'swap');
  }
}

function swapInWords({ insteadId, support }: SwapState, names: RungNames): string {
  return support ? SUPPORT_LABELS[support] : (names.get(insteadId) ?? 'a rung not in use');
}

/** Rungs whose openings this client has still to meet: those above where they stand; all, where they were assessed. */
function rungsToOpen(state: LadderState, { standsOn, planned, assessed }: LadderPerson): RungState[] {
  if (assessed) return state.rungs;
  const on = standsOn.length > 0 ? standsOn : planned;
  const places = on.map(({ rungId }) => state.rungs.findIndex((rung) => rung.id === rungId));
  return places.length === 0 ? [] : state.rungs.slice(Math.min(...places) + 1);
}

function openingOf(state: LadderState, rung: RungState, names: RungNames): string {
  const openings = state.openings.filter((opening) => opening.opens === rung.id);
  return openings.map((opening) => openingInWords(opening, names)).join('; ') || 'nothing asked';
}

function sayOfDrill(state: LadderState, rung: RungState, say: Say): void {
  say(rung, 'name', rung.name);
  say(rung, 'ladder', `${state.name}, ${state.skill}, ${state.part}`);
  say(rung, 'it was', rung.retired || state.retired ? 'retired' : 'in use');
  const drill = drillOf(state, rung);
  if (!drill) return;
  say(rung, 'measure', drill.measure);
  say(rung, 'sides', sidesOf(drill));
  say(rung, 'stress family', drill.family ?? state.family);
  say(rung, 'seconds a rep', drill.secondsPerRep === null ? 'as measured' : `${drill.secondsPerRep} s`);
  say(rung, 'share of body weight', percent(drill.share));
  say(rung, 'share of the helping hand', percent(drill.helpingShare));
  say(rung, 'upside down', drill.upsideDown ? 'yes' : 'no');
  for (const tissue of TISSUES)
    say(rung, `weight on ${TISSUE_WORDS[tissue].toLowerCase()}`, String(drill.weights[tissue] ?? 0));
}

export function sidesOf({ eachSide, eachIsLeg }: Pick<DrillState, 'eachSide' | 'eachIsLeg'>): string {
  if (!eachSide) return 'both sides together';
  return eachIsLeg ? 'each leg, both hands' : 'each side';
}

function markOf(state: LadderState, rung: RungState): string {
  return passMarkInWords(rung.pass, drillOf(state, rung)?.measure ?? 'reps');
}

function nextInWords(state: LadderState, rung: RungState): string {
  const at = state.rungs.indexOf(rung);
  const live = liveRungs(state);
  const next = state.rungs.slice(at + 1).find((one) => live.includes(one));
  return next ? `${next.name}, ${markOf(state, next)}` : 'none, this is the top';
}

function cleanOf(state: LadderState, rung: RungState): string {
  return [state.clean, rung.note].filter(Boolean).join('; ') || 'not said';
}

function percent(share: number | null): string {
  return share === null ? 'none' : `${Math.round(share * 100)} %`;
}

function weeksInWords(weeks: number): string {
  return weeks === 1 ? '1 week' : `${weeks} weeks`;
}
