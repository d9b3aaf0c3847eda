import { EQUIPMENT_LABELS } from '#lib/domain/equipment.ts';
import type { Side, Tissue } from '#lib/domain/vocabulary.ts';
import {
  type DrillState,
  drillOf,
  type LadderState,
  type RungState,
} from '#lib/planning/ladders/ladder-state.ts';
import { passMarkInWords } from '#lib/planning/ladders/pass-mark.ts';
import { TISSUE_WORDS } from '../tissue-words.ts';
import { type LadderPerson, sidesOf } from './ladder-facts.ts';

export type RungLine = {
  id: string;
  name: string;
  /** "4 × 10 s on 2 days"; what else the mark asks for is in `asks`. */
  mark: string;
  asks: string;
  /** "90 % of body weight; wrist bent back 0.92; shoulder forward 0.62". */
  drill: string;
  kit: string;
  note: string;
  stands: { clientId: string; words: string }[];
  /** Names of those who have it planned and do not stand on it. */
  planned: { clientId: string; words: string }[];
};
export type LadderPage = {
  /** Hardest first, as a ladder stands. */
  rungs: (RungLine & { number: number })[];
  retired: RungLine[];
  people: string;
};

const HEAVIEST = 3;

/** One ladder as the coach reads it: every rung with its mark, its drill in a line, and who stands on it. */
export function ladderPage(state: LadderState, people: readonly LadderPerson[]): LadderPage {
  const toLine = (rung: RungState): RungLine => {
    const drill = drillOf(state, rung);
    return {
      id: rung.id,
      name: rung.name,
      mark: passMarkInWords(rung.pass, drill?.measure ?? 'reps'),
      asks: asksOf(rung, drill),
      drill: drill ? drillInWords(drill) : '',
      kit: (drill?.equipment ?? []).map(equipmentInWords).join(', '),
      note: rung.note,
      stands: people.flatMap((person) => named(person, person.standsOn, rung.id)),
      planned: people
        .filter((person) => !person.standsOn.some((one) => one.rungId === rung.id))
        .flatMap((person) => named(person, person.planned, rung.id)),
    };
  };
  const live = state.rungs.filter((rung) => !rung.retired);
  const standing = people.filter((person) => person.standsOn.length > 0).length;
  return {
    rungs: live.map((rung, index) => ({ ...toLine(rung), number: index + 1 })).reverse(),
    retired: state.rungs.filter((rung) => rung.retired).map(toLine),
    people:
      standing === 0
        ? 'nobody stands on it'
        : `${standing} ${standing === 1 ? 'client stands' : 'clients stand'} on it`,
  };
}

function asksOf(rung: RungState, drill: DrillState | undefined): string {
  const weeks = rung.usualWeeks === 1 ? '1 week' : `${rung.usualWeeks} weeks`;
  const sides = drill?.eachSide ? [sidesOf(drill)] : [];
  return [...sides, ...(rung.needsFilm ? ['with a film'] : []), `usually ${weeks}`].join(', ');
}

function drillInWords(drill: DrillState): string {
  const weights = Object.entries(drill.weights)
    .sort(([, a], [, b]) => b - a)
    .slice(0, HEAVIEST)
    .map(([tissue, weight]) => `${TISSUE_WORDS[tissue as Tissue].toLowerCase()} ${weight}`)
    .join('; ');
  const share = drill.share === null ? '' : `${Math.round(drill.share * 100)} % of body weight; `;
  return `${share}${weights}`;
}

export function equipmentInWords(name: string): string {
  return EQUIPMENT_LABELS[name as keyof typeof EQUIPMENT_LABELS] ?? name.replaceAll('-', ' ');
}

function named(
  person: LadderPerson,
  on: { rungId: string; side: Side }[],
  rungId: string,
): { clientId: string; words: string }[] {
  const sides = on.filter((one) => one.rungId === rungId).map((one) => one.side);
  if (sides.length === 0) return [];
  const only = sides.length === 1 && sides[0] !== 'both' ? `, ${sides[0]}` : '';
  return [{ clientId: person.clientId, words: `${person.name}${only}` }];
}
