import type { HistoryCheckIn, HistoryPain, HistorySet } from '#lib/domain/history.ts';
import { SIDES } from '#lib/domain/vocabulary.ts';
import { inOrder } from './raw-check-ins.ts';

// The facts of a day as `day_rollup.facts` keeps them: JSON without names of fields, sets that are alike written once.
// A year of a client is 60 KB this way and 600 KB in full, and a night reads that of everybody.

type Extras = Partial<
  Pick<HistorySet, 'tried' | 'how' | 'clean' | 'faults' | 'support' | 'addedKg' | 'onFilm'>
>;
/** Rung, side, index of the first, planned, values one after the other, and what differs from the usual. */
type PackedSets = [string, HistorySet['side'], number, number | null, (number | null)[], Extras?];
type PackedPain = [
  HistoryPain['region'],
  HistoryPain['side'],
  HistoryPain['moment'],
  number,
  HistoryPain['kind'],
  HistoryPain['usual'],
];
type Head = Omit<HistoryCheckIn, 'date' | 'sets' | 'pain' | 'dangerSigns'>;
type PackedHead = [
  Head['id'],
  Head['zone'],
  Head['sentAt'],
  Head['kind'],
  Head['session'],
  Head['effort'],
  Head['minutes'],
  Head['ground'],
  Head['sleepHours'],
  Head['nothingHurts'],
  Head['words'],
];
type PackedCheckIn = [PackedHead, PackedSets[], PackedPain[], HistoryCheckIn['dangerSigns']];

/** The check-ins of one local date as text. Their date is not kept inside: it is the row's. */
export function packFacts(checkIns: readonly HistoryCheckIn[]): string {
  return JSON.stringify(checkIns.map(packCheckIn));
}

type Facts = (PackedCheckIn | HistoryCheckIn)[];

/**
 * The check-ins again, in the order in which they were packed. Also reads what was written before there was packing:
 * a list of check-ins as they are. `rungIds` makes equal ids one string, over all days that are unpacked with it.
 */
export function unpackFacts(date: string, facts: string, rungIds: Map<string, string>): HistoryCheckIn[] {
  return unpackDay(date, JSON.parse(facts), rungIds);
}

/** The same for a list of days as JSON, each its date and its facts. */
export function unpackDays(days: string, rungIds: Map<string, string>): HistoryCheckIn[] {
  const parsed: [date: string, facts: Facts][] = JSON.parse(days);
  return parsed.flatMap(([date, facts]) => unpackDay(date, facts, rungIds));
}

const NAMED_RUNG = /"rungId": ?"([0-9a-f-]{36})"/g;
const ID_LENGTH = 36;
const SIDE_BEGINS = '","';

/**
 * The ids of all rungs in a list of days as JSON, without reading the rest; perhaps one more that stands in words. As
 * packed a group of sets begins with its rung and side; before there was packing each set named its rung.
 */
export function rungIdsIn(days: string): Set<string> {
  const ids = new Set<string>();
  for (let at = days.indexOf('["'); at !== -1; at = days.indexOf('["', at + 2)) {
    const end = at + 2 + ID_LENGTH;
    if (days.startsWith(SIDE_BEGINS, end) && SIDES.some((side) => days.startsWith(side, end + 3)))
      ids.add(days.slice(at + 2, end));
  }
  if (days.includes('"rungId"')) for (const [, id] of days.matchAll(NAMED_RUNG)) if (id) ids.add(id);
  return ids;
}

function unpackDay(date: string, facts: Facts, rungIds: Map<string, string>): HistoryCheckIn[] {
  const checkIns = facts.map((one) => (Array.isArray(one) ? unpackCheckIn(date, one, rungIds) : one));
  return facts.every(Array.isArray) ? checkIns : inOrder(checkIns);
}

function packCheckIn(checkIn: HistoryCheckIn): PackedCheckIn {
  const { id, zone, sentAt, kind, session, effort, minutes, ground, sleepHours, nothingHurts, words } =
    checkIn;
  return [
    [id, zone, sentAt, kind, session, effort, minutes, ground, sleepHours, nothingHurts, words],
    packSets(checkIn.sets),
    checkIn.pain.map((told) => [told.region, told.side, told.moment, told.value, told.kind, told.usual]),
    checkIn.dangerSigns,
  ];
}

function packSets(sets: readonly HistorySet[]): PackedSets[] {
  const groups: PackedSets[] = [];
  let [key, next] = ['', 0];
  for (const set of sets) {
    const extras = extrasOf(set);
    const own = JSON.stringify([set.rungId, set.side, set.planned, extras]);
    const group = groups.at(-1);
    if (group && own === key && set.index === next) group[4].push(set.value);
    else
      groups.push([
        set.rungId,
        set.side,
        set.index,
        set.planned,
        [set.value],
        ...(extras ? [extras] : []),
      ] as PackedSets);
    [key, next] = [own, set.index + 1];
  }
  return groups;
}

function extrasOf(set: HistorySet): Extras | undefined {
  const extras: Extras = {};
  if (set.tried !== null) extras.tried = set.tried;
  if (set.how !== 'typed') extras.how = set.how;
  if (!set.clean) extras.clean = false;
  if (set.faults.length > 0) extras.faults = set.faults;
  if (set.support !== null) extras.support = set.support;
  if (set.addedKg !== null) extras.addedKg = set.addedKg;
  if (set.onFilm) extras.onFilm = set.onFilm;
  return Object.keys(extras).length > 0 ? extras : undefined;
}

function unpackCheckIn(
  date: string,
  [head, groups, pain, dangerSigns]: PackedCheckIn,
  rungIds: Map<string, string>,
): HistoryCheckIn {
  const sets: HistorySet[] = [];
  for (const group of groups) unpackSets(group, rungIds, sets);
  return {
    id: head[0],
    date,
    zone: head[1],
    sentAt: head[2],
    kind: head[3],
    session: head[4],
    effort: head[5],
    minutes: head[6],
    ground: head[7],
    sleepHours: head[8],
    nothingHurts: head[9],
    sets,
    pain: pain.map(([region, side, moment, value, kind, usual]) => ({
      region,
      side,
      moment,
      value,
      kind,
      usual,
    })),
    dangerSigns,
    words: head[10],
  };
}

function unpackSets(
  [id, side, first, planned, values, extras]: PackedSets,
  rungIds: Map<string, string>,
  into: HistorySet[],
): void {
  const rungId = rungIds.get(id) ?? id;
  if (rungId === id) rungIds.set(id, rungId);
  for (let at = 0; at < values.length; at += 1) {
    into.push({
      rungId,
      side,
      index: first + at,
      planned,
      value: values[at] ?? null,
      tried: extras?.tried ?? null,
      how: extras?.how ?? 'typed',
      clean: extras?.clean ?? true,
      faults: extras?.faults ?? [],
      support: extras?.support ?? null,
      addedKg: extras?.addedKg ?? null,
      ...(extras?.onFilm && { onFilm: extras.onFilm }),
    });
  }
}
