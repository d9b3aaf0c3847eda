import type { Tissue } from '#lib/domain/vocabulary.ts';
import { type LadderState, liveRungs } from '#lib/planning/ladders/ladder-state.ts';
import { newRungForm, type RungForm, rungForm } from './rung-form.ts';

type SwapChoice = { id: string; name: string; ladder: string; weights: Partial<Record<Tissue, number>> };
type Loaded = { ladder: LadderState; swapRungs: SwapChoice[] };

export type RungPage = {
  rungId: string;
  title: string;
  /** "Rung 4 of 15 of Planche holds." */
  place: string;
  form: RungForm;
  /** Other rungs with the same drill: they differ in the pass mark only. */
  sharedWith: string[];
  retired: boolean;
  swapRungs: SwapChoice[];
};

/** One rung on the form; undefined: no such rung on this ladder. */
export function rungPage({ ladder, swapRungs }: Loaded, rungId: string): RungPage | undefined {
  const rung = ladder.rungs.find((one) => one.id === rungId);
  const form = rungForm(ladder, rungId);
  if (!rung || !form) return undefined;
  const live = liveRungs(ladder);
  const number = live.indexOf(rung) + 1;
  return {
    rungId,
    title: rung.name,
    place: rung.retired
      ? `Retired from ${ladder.name}; what was logged on it stays.`
      : `Rung ${number} of ${live.length} of ${ladder.name}.`,
    form,
    sharedWith: ladder.rungs
      .filter((one) => one.drillId === rung.drillId && one.id !== rungId)
      .map((one) => numbered(ladder, one.id)),
    retired: rung.retired,
    swapRungs,
  };
}

export type NewRungPage = {
  form: RungForm;
  /** The rung it starts above: the hardest one; null on an empty ladder. */
  above: string | null;
  like: string | null;
  /** Rungs that it can stand above, hardest first. */
  places: { id: string; label: string }[];
};

/** A new rung, at first above the hardest. */
export function newRungPage(ladder: LadderState): NewRungPage {
  const live = liveRungs(ladder);
  const top = live.at(-1);
  return {
    form: newRungForm(ladder, top?.id ?? null),
    above: top?.id ?? null,
    like: top?.name ?? null,
    places: live.map((rung) => ({ id: rung.id, label: `above ${numbered(ladder, rung.id)}` })).reverse(),
  };
}

function numbered(ladder: LadderState, rungId: string): string {
  const at = liveRungs(ladder).findIndex((rung) => rung.id === rungId);
  const name = ladder.rungs.find((rung) => rung.id === rungId)?.name ?? '';
  return at < 0 ? `${name} (retired)` : `${at + 1} ${name}`;
}
