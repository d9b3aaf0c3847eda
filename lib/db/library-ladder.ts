import type { DrillState, LadderState, RungState } from '#lib/planning/ladders/ladder-state.ts';
import { numberRungs } from '#lib/planning/ladders/number-rungs.ts';
import type { TeamPg } from './client.ts';
import { readOpenings, saveOpenings } from './library-openings.ts';
import { saveSwaps } from './library-swaps.ts';

/** One ladder with all its rungs and drills, locked until the end of the transaction where it is to be changed. */
export async function findLadder(
  tx: TeamPg,
  ladderId: string,
  { lock }: { lock: boolean },
): Promise<LadderState | undefined> {
  const { rows } = await tx.client.query<
    Omit<LadderState, 'rungs' | 'drills' | 'openings'> & { openings: unknown }
  >(
    `select l.id, l.part_id as "partId", p.name as part, s.name as skill, l.name, l.family, l.clean,
       coalesce(l.faults, '{}') as faults, l.retired_at is not null as retired, l.openings
     from ladder l join part p on p.team_id = l.team_id and p.id = l.part_id
     join skill s on s.team_id = p.team_id and s.id = p.skill_id
     where l.team_id = $1 and l.id = $2 ${lock ? 'for update of l' : ''}`,
    [tx.teamId, ladderId],
  );
  const [ladder] = rows;
  if (!ladder) return undefined;
  return {
    ...ladder,
    openings: await readOpenings(tx, ladder.openings),
    rungs: await listRungs(tx, ladderId),
    drills: await listDrills(tx, ladderId),
  };
}

async function listRungs(tx: TeamPg, ladderId: string): Promise<RungState[]> {
  const { rows } = await tx.client.query<RungState>(
    `select r.id, r.drill_id as "drillId", r.name,
       json_build_object('sets', r.pass_sets, 'target', r.pass_target, 'days', r.pass_days, 'tries', r.pass_tries) as pass,
       r.usual_weeks as "usualWeeks", r.needs_film as "needsFilm", r.note, r.retired_at is not null as retired,
       coalesce((select json_agg(json_build_object('insteadId', w.instead_id, 'tissue', w.tissue,
             'support', nullif(w.support, ''), 'why', w.why) order by w.tissue, w.position, w.id)
         from swap w where w.team_id = r.team_id and w.rung_id = r.id), '[]') as swaps
     from rung r where r.team_id = $1 and r.ladder_id = $2
     order by r.position, r.retired_at is not null, r.key, r.id`,
    [tx.teamId, ladderId],
  );
  return rows;
}

async function listDrills(tx: TeamPg, ladderId: string): Promise<DrillState[]> {
  const { rows } = await tx.client.query<DrillState>(
    `select id, name, family, measure, each_side as "eachSide", each_is_leg as "eachIsLeg",
       seconds_per_rep as "secondsPerRep", share, helping_share as "helpingShare", share_source as "shareSource",
       weights, coalesce(equipment, '{}') as equipment, upside_down as "upsideDown", camera
     from drill where team_id = $1 and ladder_id = $2 order by created_at, id`,
    [tx.teamId, ladderId],
  );
  return rows;
}

/** Writes a ladder as it is after an edit. Rows are added and changed, never taken away. */
export async function saveLadder(tx: TeamPg, ladder: LadderState, now: Date): Promise<void> {
  const { client, teamId } = tx;
  await client.query(
    `update ladder set part_id = $3, name = $4, family = $5, clean = $6, faults = $7,
       retired_at = case when $8 then coalesce(retired_at, $9) end
     where team_id = $1 and id = $2`,
    [
      teamId,
      ladder.id,
      ladder.partId,
      ladder.name,
      ladder.family,
      ladder.clean,
      ladder.faults,
      ladder.retired,
      now,
    ],
  );
  await client.query(DRILLS, [teamId, ladder.id, JSON.stringify(ladder.drills)]);
  const positions = numberRungs(ladder.rungs);
  const rungs = ladder.rungs.map(({ pass, swaps: _swaps, ...rung }) => ({
    ...rung,
    ...pass,
    position: positions.get(rung.id),
  }));
  await client.query(RUNGS, [teamId, ladder.id, JSON.stringify(rungs), now]);
  await saveOpenings(tx, ladder.id, ladder.openings);
  await saveSwaps(tx, ladder.rungs);
}

const DRILLS = `
  insert into drill (team_id, ladder_id, id, name, family, measure, each_side, each_is_leg, seconds_per_rep, share,
    helping_share, share_source, weights, equipment, upside_down, camera)
  select $1, $2, d.id, d.name, d.family, d.measure, d."eachSide", d."eachIsLeg", d."secondsPerRep", d.share,
    d."helpingShare", d."shareSource", d.weights, d.equipment, d."upsideDown", d.camera
  from jsonb_to_recordset($3) as d(id uuid, name text, family text, measure text, "eachSide" boolean,
    "eachIsLeg" boolean, "secondsPerRep" float8, share float8, "helpingShare" float8, "shareSource" text,
    weights jsonb, equipment text[], "upsideDown" boolean, camera text)
  on conflict (team_id, id) do update set name = excluded.name, family = excluded.family, measure = excluded.measure,
    each_side = excluded.each_side, each_is_leg = excluded.each_is_leg, seconds_per_rep = excluded.seconds_per_rep,
    share = excluded.share, helping_share = excluded.helping_share, share_source = excluded.share_source,
    weights = excluded.weights, equipment = excluded.equipment,
    upside_down = excluded.upside_down, camera = excluded.camera`;

const RUNGS = `
  insert into rung (team_id, ladder_id, id, drill_id, position, name, pass_sets, pass_target, pass_days, pass_tries,
    usual_weeks, needs_film, note, retired_at)
  select $1, $2, r.id, r."drillId", r.position, r.name, r.sets, r.target, r.days, r.tries, r."usualWeeks",
    r."needsFilm", r.note, case when r.retired then $4::timestamptz end
  from jsonb_to_recordset($3) as r(id uuid, "drillId" uuid, position int, name text, sets int, target float8, days int,
    tries int, "usualWeeks" float8, "needsFilm" boolean, note text, retired boolean)
  on conflict (team_id, id) do update set drill_id = excluded.drill_id, position = excluded.position,
    name = excluded.name, pass_sets = excluded.pass_sets, pass_target = excluded.pass_target,
    pass_days = excluded.pass_days, pass_tries = excluded.pass_tries, usual_weeks = excluded.usual_weeks,
    needs_film = excluded.needs_film, note = excluded.note,
    retired_at = case when excluded.retired_at is not null then coalesce(rung.retired_at, excluded.retired_at) end`;
