import { GAP_KIT } from '#lib/domain/gap-kit.ts';
import { MEASURE_UNITS } from '#lib/domain/labels.ts';
import type { Measure, Side } from '#lib/domain/vocabulary.ts';
import type {
  Ask,
  AskRole,
  Assessment,
  FilmShows,
  GapLadder,
  SideSeen,
} from '#lib/planning/gaps/gap-types.ts';
import { askedInWords } from '#lib/planning/gaps/standing-of-part.ts';

/** One side of a part as typed: what was typed is kept as typed. */
export type FormSide = {
  side: Side;
  film: FilmShows;
  rungId: string;
  sets: string;
  value: string;
  clean: '' | 'yes' | 'no';
  pain: string;
};
export type FormPart = {
  ladderId: string;
  role: AskRole;
  part: string;
  /** "Heel pull, back to wall, of Handstand". */
  about: string;
  why: string;
  measure: Measure;
  unit: string;
  askedRungId: string;
  rungs: { id: string; label: string }[];
  sides: FormSide[];
};
export type SkillChoice = {
  id: string;
  name: string;
  ladders: { name: string; rungs: { id: string; label: string }[] }[];
};
export type GapFormModel = {
  clientId: string;
  skills: SkillChoice[];
  skillId: string;
  aimRungId: string;
  under18: boolean;
  under18Allowed: boolean;
  kit: { key: (typeof GAP_KIT)[number]; label: string; on: boolean }[];
  sessions: string[];
  parts: FormPart[];
};

export const FILM_WORDS: Record<FilmShows, string> = {
  'not-seen': 'not seen',
  steady: 'steady all the way',
  hurried: 'hurried or wavering',
  drops: 'drops through',
};

/** The form of an assessment, filled in; groups of parts in the order of `asks`. */
export function gapForm(about: {
  clientId: string;
  under18: boolean;
  library: readonly GapLadder[];
  assessment: Assessment;
  asks: readonly Ask[];
}): GapFormModel {
  const { assessment } = about;
  const seen = new Map(assessment.parts.map((part) => [part.ladderId, part.sides]));
  return {
    clientId: about.clientId,
    skills: skillChoices(about.library),
    skillId: assessment.skillId,
    aimRungId: assessment.aimRungId,
    under18: about.under18,
    under18Allowed: assessment.under18Allowed,
    kit: GAP_KIT.map((key) => ({ key, label: kitLabel(key), on: assessment.kit.includes(key) })),
    sessions: [...assessment.sessions],
    parts: about.asks.map((ask) => toPart(ask, seen.get(ask.ladder.id) ?? [])),
  };
}

function toPart({ ladder, rung, role, why }: Ask, sides: readonly SideSeen[]): FormPart {
  return {
    ladderId: ladder.id,
    role,
    part: ladder.part,
    about: ladder.name === ladder.part ? ladder.skill : `${ladder.name}, of ${ladder.skill}`,
    why,
    measure: rung.measure,
    unit: MEASURE_UNITS[rung.measure] || 'reps',
    askedRungId: rung.id,
    rungs: ladder.rungs.map((one) => ({ id: one.id, label: askedInWords(one) })),
    sides: sides.map((one) => ({
      side: one.side,
      film: one.film,
      rungId: one.rungId ?? '',
      sets: text(one.sets),
      value: text(one.value),
      clean: one.clean === null ? '' : one.clean ? 'yes' : 'no',
      pain: text(one.pain),
    })),
  };
}

/** What the form sends: the text as typed, empty where nothing was. */
export function gapBody(model: GapFormModel, parts: readonly FormPart[]): object {
  return {
    skillId: model.skillId,
    aimRungId: model.aimRungId,
    kit: model.kit.filter(({ on }) => on).map(({ key }) => key),
    sessions: model.sessions,
    under18Allowed: model.under18Allowed,
    parts: parts.map((part) => ({
      ladderId: part.ladderId,
      askedRungId: part.askedRungId,
      sides: part.sides.map(({ clean, ...side }) => ({
        ...side,
        clean: clean === '' ? null : clean === 'yes',
      })),
    })),
  };
}

/** Skills whose ladders are more than preparation, each with its ladders and rungs. */
function skillChoices(library: readonly GapLadder[]): SkillChoice[] {
  const choices = new Map<string, SkillChoice>();
  for (const ladder of library.filter(({ rungs }) => rungs.length > 0)) {
    const choice = choices.get(ladder.skillId) ?? { id: ladder.skillId, name: ladder.skill, ladders: [] };
    choice.ladders.push({
      name: ladder.name,
      rungs: ladder.rungs.map((rung) => ({ id: rung.id, label: askedInWords(rung) })),
    });
    choices.set(ladder.skillId, choice);
  }
  return [...choices.values()];
}

function kitLabel(key: (typeof GAP_KIT)[number]): string {
  return key === 'parallel-bars' ? 'low parallel bars' : key;
}

function text(value: number | null): string {
  return value === null ? '' : String(value);
}
