import { makeClient } from './generator.ts';
import { PLANTED } from './planted.ts';
import { SHEET_RULES, type SheetRaise, sheetRaises } from './spreadsheet.ts';
import { FIRST_NIGHT, type Watched, watch } from './watch.ts';
import { WORLDS } from './worlds.ts';

/** Some clients of one world: clean ones, or ones with one planted condition. */
export type Job = { world: number; planted: string | null; seed: number; count: number; days: number };

export type Looked = {
  onset: number | null;
  ladder: string | null;
  watched: Watched;
  /** What each rule of a spreadsheet said, in the order of the rules. */
  sheet: SheetRaise[][];
};

/** Days before the onset on which a case is looked at already: a reason that stands open then is no finding of it. */
const BEFORE_ONSET = 28;

export function runJob({ world, planted, seed, count, days }: Job): Looked[] {
  const setting = WORLDS[world];
  const truth = PLANTED.find((one) => one.name === planted);
  if (!setting) throw new Error(`there is no world ${world}`);
  return Array.from({ length: count }, (_, index) => {
    const made = makeClient(setting, planted ?? undefined, seed + index, days);
    const from = made.onset === undefined ? FIRST_NIGHT : made.onset - BEFORE_ONSET;
    const to = made.onset === undefined ? days : made.onset + (truth?.windowDays ?? 0);
    return {
      onset: made.onset ?? null,
      ladder: made.ladder ?? null,
      watched: watch(made, from, to),
      sheet: world === 0 ? SHEET_RULES.map((rule) => sheetRaises(made, rule, from, to)) : [],
    };
  });
}
