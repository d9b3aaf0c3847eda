import { randomUUID } from 'node:crypto';
import { type LibraryRows, libraryRows, type NewId } from '#lib/library/copy-plan.ts';
import { type Library, type LibrarySupport, STARTER_LIBRARY } from '#lib/library/library.ts';
import type { TeamPg } from './client.ts';
import { fillSwaps } from './swaps.ts';

export type CopiedLibrary = {
  /** Row id of each rung of the library, by key such as `H3.4`. */
  rungIds: Map<string, string>;
  ladderIds: Map<string, string>;
  skillIds: Map<string, string>;
};

/** Copies the starter library into a team, with its swaps. The team may change every row afterwards. */
export async function copyLibrary(
  tx: TeamPg,
  options: { library?: Library; newId?: NewId } = {},
): Promise<CopiedLibrary> {
  const library = options.library ?? STARTER_LIBRARY;
  const rows = libraryRows(library, options.newId ?? randomUUID);
  await insertSkillsAndParts(tx, rows);
  await insertLadders(tx, rows);
  await insertDrills(tx, rows);
  await insertRungs(tx, rows);
  await insertSupports(tx, library.supports);
  await fillSwaps(tx);
  return {
    rungIds: new Map(rows.rungs.map((row) => [row.rung.key, row.id])),
    ladderIds: new Map(rows.ladders.map((row) => [row.key, row.id])),
    skillIds: new Map(rows.skills.map((row) => [row.key, row.id])),
  };
}

// Bulk rows travel as one JSON document: jsonb_to_recordset keeps arrays and nulls that unnest would flatten.
function insert(tx: TeamPg, sql: string, rows: object[]): Promise<unknown> {
  return tx.client.query(sql, [tx.teamId, JSON.stringify(rows)]);
}

async function insertSkillsAndParts(tx: TeamPg, rows: LibraryRows): Promise<void> {
  await insert(
    tx,
    `insert into skill (team_id, id, key, name, position)
     select $1, r.id, r.key, r.name, r.position
     from jsonb_to_recordset($2) as r(id uuid, key text, name text, position int)`,
    rows.skills,
  );
  await insert(
    tx,
    `insert into part (team_id, id, skill_id, name, position)
     select $1, r.id, r."skillId", r.name, r.position
     from jsonb_to_recordset($2) as r(id uuid, "skillId" uuid, name text, position int)`,
    rows.parts,
  );
}

async function insertLadders(tx: TeamPg, rows: LibraryRows): Promise<void> {
  await insert(
    tx,
    `insert into ladder (team_id, id, part_id, key, name, family, clean, faults, openings, position)
     select $1, r.id, r."partId", r.key, r.name, r.family, r.clean, r.faults, r.openings, r.position
     from jsonb_to_recordset($2)
       as r(id uuid, "partId" uuid, key text, name text, family text, clean text, faults text[], openings jsonb, position int)`,
    rows.ladders.map(({ ladder, ...row }) => ({
      ...row,
      family: ladder.family,
      clean: ladder.clean,
      faults: ladder.faults,
      openings: ladder.openings,
    })),
  );
}

async function insertDrills(tx: TeamPg, rows: LibraryRows): Promise<void> {
  await insert(
    tx,
    `insert into drill (team_id, id, ladder_id, name, family, measure, each_side, each_is_leg, seconds_per_rep,
       share, helping_share, share_source, weights, equipment, upside_down, camera)
     select $1, r.id, r."ladderId", r.name, r.family, r.measure, r.per <> 'both', r.per = 'leg', r."secondsPerRep",
       r.share, r."helpingShare", coalesce(r."shareSource", ''), r.weights, r.equipment,
       coalesce(r."upsideDown", false), r.camera
     from jsonb_to_recordset($2)
       as r(id uuid, "ladderId" uuid, name text, family text, measure text, per text, "secondsPerRep" float8,
         share float8, "helpingShare" float8, "shareSource" text, weights jsonb, equipment text[],
         "upsideDown" boolean, camera text)`,
    rows.drills.map(({ rung, ...row }) => ({ ...rung, ...row })),
  );
}

async function insertRungs(tx: TeamPg, rows: LibraryRows): Promise<void> {
  await insert(
    tx,
    `insert into rung (team_id, id, ladder_id, drill_id, key, position, name, pass_sets, pass_target, pass_days,
       pass_tries, usual_weeks, needs_film, note)
     select $1, r.id, r."ladderId", r."drillId", r.key, r.position, r.name, r.sets, r.target, r.days,
       r.tries, r."usualWeeks", coalesce(r."needsFilm", false), coalesce(r.note, '')
     from jsonb_to_recordset($2)
       as r(id uuid, "ladderId" uuid, "drillId" uuid, key text, position int, name text, sets int, target float8,
         days int, tries int, "usualWeeks" float8, "needsFilm" boolean, note text)`,
    rows.rungs.map(({ rung, ...row }) => ({ ...rung, ...rung.pass, ...row })),
  );
}

async function insertSupports(tx: TeamPg, supports: LibrarySupport[]): Promise<void> {
  await insert(
    tx,
    `insert into support_profile (team_id, key, name, wrist_back_factor, wrist_forward_factor, add, results_count)
     select $1, r.key, r.name, r."wristBackFactor", coalesce(r."wristForwardFactor", 1), coalesce(r.add, '{}'),
       coalesce(r."resultsCount", true)
     from jsonb_to_recordset($2)
       as r(key text, name text, "wristBackFactor" float8, "wristForwardFactor" float8, add jsonb, "resultsCount" boolean)`,
    supports,
  );
}
