import { rollupOf } from '#lib/db/rollup-of.ts';
import type { ClientHistory, HistoryCheckIn, HistoryRung, HistorySet } from '#lib/domain/history.ts';
import { addDays, daysBetween } from '#lib/domain/local-date.ts';
import { FIRST_DAY, makeClient } from '../detect/generator.ts';
import { WORLDS } from '../detect/worlds.ts';

// Of every hundred clients some twenty have something that the checks are there to find (common practice, no source).
const PLANTED = [
  'stall',
  'side',
  'jump',
  'pain-slow',
  'quiet',
  'fading',
  'slipping',
  'step',
  'too-little-time',
];
/** A session takes three of five ladders in turn: eight or nine sets, 190 sessions a year. */
const IN_TURN = { of: 5, taken: 3 };

/** Stands for the number of a client in ids of check-ins, until it is written for that client. */
export const ID_OF_CLIENT = 'c0ffee00';

export type TemplateRows = {
  days: object[];
  checkIns: object[];
  sets: object[];
  pain: object[];
  plans: object[];
  placements: object[];
};

/**
 * Histories of the generator, `days` long up to the date `until`, in the form of rows: each stands for many clients.
 * `rungs`: the library as a team has it, by key. Rollups are made by what the submit makes them by.
 */
export function makeTemplates(
  count: number,
  { days, until, rungs }: { days: number; until: string; rungs: ReadonlyMap<string, HistoryRung> },
): TemplateRows {
  const rows: TemplateRows = { days: [], checkIns: [], sets: [], pain: [], plans: [], placements: [] };
  for (let template = 0; template < count; template += 1) addTemplate(rows, template, { days, until, rungs });
  return rows;
}

function addTemplate(
  rows: TemplateRows,
  template: number,
  { days, until, rungs }: { days: number; until: string; rungs: ReadonlyMap<string, HistoryRung> },
): void {
  const [world] = WORLDS;
  if (!world) throw new Error('no world');
  const planted = template % 5 === 0 ? PLANTED[(template / 5) % PLANTED.length] : undefined;
  const { history } = makeClient({ ...world, daysPerWeek: [4, 4] }, planted, 5_000 + template, days);
  const moved = daysBetween(addDays(FIRST_DAY, days - 1), until);
  const at = (date: string) => addDays(date, moved);
  const rungOf = (key: string): HistoryRung => {
    const rung = rungs.get(key);
    if (!rung) throw new Error(`the library has no rung ${key}`);
    return rung;
  };
  history.checkIns.forEach((one, index) => {
    const checkIn = takenInTurn(history, one, index, rungOf);
    const id = `${ID_OF_CLIENT}-${hex(template, 4)}-7${hex(index, 3)}-8000-000000000000`;
    const date = at(one.date);
    const told = { ...checkIn, id, date, zone: 'Europe/Berlin', sentAt: `${date}T19:00:00.000Z` };
    const key = { t: template, k: index };
    const { sets, pain, ...head } = told;
    rows.checkIns.push({ ...key, ...head });
    rows.sets.push(...sets.map((set) => ({ ...key, ...set })));
    rows.pain.push(...pain.map((score) => ({ ...key, ...score })));
    rows.days.push({ t: template, ...rollupOf(date, [told]) });
  });
  for (const plan of history.plans) {
    const items = plan.items.map((item) => ({ ...item, rungId: rungOf(item.rungId).id }));
    const timesPerWeek = (plan.sessionsPerWeek * IN_TURN.taken) / IN_TURN.of;
    rows.plans.push({
      t: template,
      ...plan,
      from: at(plan.from),
      items: items.map((item) => ({ ...item, timesPerWeek })),
    });
  }
  for (const { rungId, side, from } of history.placements) {
    const { id, ladderId } = rungOf(rungId);
    rows.placements.push({ t: template, rungId: id, ladderId, side, from: at(from) });
  }
}

function takenInTurn(
  history: ClientHistory,
  checkIn: HistoryCheckIn,
  index: number,
  rungOf: (key: string) => HistoryRung,
): HistoryCheckIn {
  const ladders = [...new Set(history.placements.map(({ ladderId }) => ladderId))];
  const isTaken = (ladder: string) => (ladders.indexOf(ladder) + index * 2) % IN_TURN.of < IN_TURN.taken;
  const ladderOf = new Map(history.rungs.map((rung) => [rung.id, rung.ladderId]));
  return {
    ...checkIn,
    sets: checkIn.sets
      .filter((set) => isTaken(ladderOf.get(set.rungId) ?? ''))
      .map((set) => asTold(history, set, index, rungOf(set.rungId).id)),
  };
}

/**
 * A set is planned as it was done: the plans of the generator ask the pass mark from the first day. Where its coach
 * cannot go on to another rung, the mark is missed every other week, else the step up would be proposed for ever.
 */
function asTold(history: ClientHistory, set: HistorySet, index: number, rungId: string): HistorySet {
  const rung = history.rungs.find(({ id }) => id === set.rungId);
  const next = history.rungs.find(
    (one) => one.ladderId === rung?.ladderId && one.position === rung.position + 1,
  );
  const ends = rung && (!next || next.measure.startsWith('range'));
  const missed = ends && Math.floor(index / 2) % 2 === 0;
  const value = missed ? Math.min(set.value ?? 0, Math.floor(rung.pass.target * 0.9)) : set.value;
  return { ...set, rungId, value, planned: value };
}

function hex(value: number, digits: number): string {
  return value.toString(16).padStart(digits, '0');
}
