import { openingsSchema } from '#lib/schemas/openings.ts';
import type { PackRecord } from '#lib/schemas/pack-record.ts';
import type { LadderMatches, OwnLibrary } from './match-ladders.ts';
import type { Row, TableRows } from './rows-to-keep.ts';

type Given = {
  record: PackRecord;
  own: OwnLibrary;
  matches: LadderMatches;
  /** Filled with the new id of everything that is brought. */
  ids: Map<string, string>;
  from: string;
  newId: () => string;
};

/**
 * Ladders that are nobody's own here, copied in whole behind the team's own, with the skills and parts they need, marked
 * with the team they came from. A key that the team has already is not given twice. Pure but for `newId`.
 */
export function libraryToBring({ record, own, matches, ids, from, newId }: Given): TableRows[] {
  const brought = new Set(matches.ladders.filter((one) => one.own === null).map(({ id }) => id));
  const ladders = record.ladder.filter(({ id }) => brought.has(id));
  const rungs = record.rung.filter(({ ladder_id }) => brought.has(ladder_id));
  const drills = record.drill.filter(({ ladder_id }) => brought.has(ladder_id));
  const skills = record.skill.filter(({ id }) => !matches.ids.has(id));
  const needed = new Set(ladders.map(({ part_id }) => part_id));
  const parts = record.part.filter(({ id }) => needed.has(id) && !matches.ids.has(id));
  for (const { id } of [...skills, ...parts, ...ladders, ...drills, ...rungs]) ids.set(id, newId());
  const to = (id: string) => ids.get(id) ?? id;
  const taken = { ladder: keysOf(own.ladder), rung: keysOf(own.rung) };
  const keyed = new Map(rungs.map(({ id, key }) => [key ?? id, freeKey(key, taken.rung) ?? to(id)]));
  const last = (rows: readonly { position: number }[]) =>
    rows.reduce((most, { position }) => Math.max(most, position), -1) + 1;
  return [
    table('skill', skills, (row, at) => ({ ...row, id: to(row.id), position: last(own.skill) + at })),
    table('part', parts, (row, at) => ({
      ...row,
      id: to(row.id),
      skill_id: to(row.skill_id),
      position: last(own.part) + at,
    })),
    table('ladder', ladders, (row, at) => ({
      ...row,
      id: to(row.id),
      part_id: to(row.part_id),
      key: freeKey(row.key, taken.ladder),
      openings: openingsOf(row.openings, keyed),
      position: last(own.ladder) + at,
      brought_from: from,
    })),
    table('drill', drills, (row) => ({ ...row, id: to(row.id), ladder_id: to(row.ladder_id) })),
    table('rung', rungs, (row) => ({
      ...row,
      id: to(row.id),
      ladder_id: to(row.ladder_id),
      drill_id: to(row.drill_id),
      key: freeKey(row.key, taken.rung),
    })),
  ];
}

function table<One>(name: string, rows: readonly One[], of: (row: One, at: number) => Row): TableRows {
  return { table: name, rows: rows.map(of) };
}

function keysOf(rows: readonly { key: string | null }[]): Set<string> {
  return new Set(rows.flatMap(({ key }) => (key === null ? [] : [key])));
}

function freeKey(key: string | null, taken: ReadonlySet<string>): string | null {
  return key === null || taken.has(key) ? null : key;
}

/** What must stand before rungs open, by the names that the rungs have here; of other ladders as it is written. */
function openingsOf(kept: unknown, names: ReadonlyMap<string, string>): unknown {
  const of = (name: string) => names.get(name) ?? name;
  return openingsSchema
    .catch([])
    .parse(kept)
    .map((opening) => ({
      ...opening,
      opens: of(opening.opens),
      needsAll: opening.needsAll.map((all) => all.map(of)),
    }));
}
