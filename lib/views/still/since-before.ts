import type { KeptStill } from '#lib/balance/kept-still.ts';
import { readStill } from '#lib/balance/read-still.ts';
import {
  FIRST_SPREAD,
  type StillErrors,
  sameSpread,
  spreadOfPlacings,
  stillErrors,
  toErrorPlace,
} from '#lib/balance/still-errors.ts';

type Placing = Omit<KeptStill, 'at' | 'id'>;
/** Figures that are compared over time: read and error, in the unit that is said. */
type Figure = { name: string; unit: string; value: number | undefined; error: number };
/** One figure of a kept placing: "182°", "± 3°", and what became of it since the one before. */
export type KeptFigure = { name: string; told: string; since: string };

const SHARE = 100;

/**
 * What kept placings say, the newest first, each against the one before it: a change that is smaller than both errors
 * together (two standard deviations) is no change that placing can show.
 */
export function keptFigures(frames: readonly Placing[]): KeptFigure[][] {
  const all = frames.map(figuresOf);
  return all.map((figures, at) =>
    figures.map((figure, which) => ({
      name: figure.name,
      told: toldOf(figure),
      since: sinceOf(figure, all[at + 1]?.[which]),
    })),
  );
}

function figuresOf(frame: Placing): Figure[] {
  const still = { ...frame, placed: frame.second ?? frame.placed };
  const spread = frame.second ? spreadOfPlacings(frame.placed, frame.second) : sameSpread(FIRST_SPREAD);
  const [reading, errors] = [readStill(still), stillErrors(still, spread)];
  const figure = (
    name: string,
    unit: string,
    value: number | undefined,
    key: keyof StillErrors,
    times = 1,
  ) => ({
    name,
    unit,
    value: value === undefined ? undefined : value * times,
    error: (errors?.[key] ?? 0) * times,
  });
  return [
    figure('centre of mass over the hand', ' %', reading?.partOfHand, 'partOfHand', SHARE),
    figure('shoulder', '°', reading?.angles.shoulder, 'shoulderAngle'),
    figure('hip', '°', reading?.angles.hip, 'hipAngle'),
  ];
}

function toldOf({ value, error, unit }: Figure): string {
  if (value === undefined) return 'not known';
  return `${toErrorPlace(value, error)}${unit}${error > 0 ? ` ± ${toErrorPlace(error, error)}` : ''}`;
}

function sinceOf(now: Figure, before: Figure | undefined): string {
  if (now.value === undefined || before?.value === undefined) return '';
  const error = Math.hypot(now.error, before.error);
  const change = now.value - before.value;
  if (Math.abs(change) <= 2 * error) return 'no change that placing can show';
  const shown = toErrorPlace(Math.abs(change), error);
  return `${change > 0 ? '+' : '-'}${shown}${now.unit} ± ${toErrorPlace(error, error)}`;
}
