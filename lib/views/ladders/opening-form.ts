import type { Support } from '#lib/domain/vocabulary.ts';
import { type LadderState, liveRungs, type OpeningState } from '#lib/planning/ladders/ladder-state.ts';

export type RungOption = { id: string; label: string };
export type OpeningsForm = {
  openings: OpeningState[];
  /** Rungs of this ladder, easiest first. */
  own: RungOption[];
  /** Rungs in use of the whole team, ladder by ladder. */
  ladders: { id: string; name: string; rungs: RungOption[] }[];
};

type TeamRung = {
  id: string;
  ladderId: string;
  ladder: string;
  skill: string;
  position: number;
  name: string;
};

/** Supports that can make up for what an opening asks: those that spare something. */
export const OPENING_SUPPORTS: readonly Support[] = [
  'hands-turned-out',
  'wedge',
  'parallel-bars',
  'fists',
  'rings',
];

/** The openings of a ladder on their form, with what can be chosen. */
export function openingsForm(ladder: LadderState, team: readonly TeamRung[]): OpeningsForm {
  const ladders = new Map<string, OpeningsForm['ladders'][number]>();
  for (const rung of team) {
    const shelf = ladders.get(rung.ladderId) ?? {
      id: rung.ladderId,
      name: `${rung.ladder}, ${rung.skill}`,
      rungs: [],
    };
    shelf.rungs.push({ id: rung.id, label: `${rung.name} (${rung.ladder}, rung ${rung.position})` });
    ladders.set(rung.ladderId, shelf);
  }
  return {
    openings: ladder.openings,
    own: liveRungs(ladder).map((rung, index) => ({ id: rung.id, label: `${index + 1} ${rung.name}` })),
    ladders: [...ladders.values()],
  };
}

/** A new opening of a rung that has none yet; the easiest else. It asks for one rung, not chosen yet. */
export function newOpening({ openings, own }: Pick<OpeningsForm, 'openings' | 'own'>): OpeningState {
  const free = own.find(({ id }) => !openings.some((opening) => opening.opens === id)) ?? own[0];
  return { opens: free?.id ?? '', needsAll: [['']], orOnSupports: [], under18CoachTick: false, words: '' };
}
