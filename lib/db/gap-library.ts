import type { HistoryRung } from '#lib/domain/history.ts';
import type { Family } from '#lib/domain/vocabulary.ts';
import type { GapLadder, GapRung } from '#lib/planning/gaps/gap-types.ts';
import { openingsSchema } from '#lib/schemas/openings.ts';
import type { TeamPg } from './client.ts';

type LadderRow = Omit<GapLadder, 'rungs' | 'openings'> & { openings: unknown };

/** Every ladder in use with its rungs in use and their kit, in the order of the library; rungs of the team's own have their id as key. */
export async function loadGapLibrary(tx: TeamPg): Promise<GapLadder[]> {
  const { rows } = await tx.client.query<LadderRow>(
    `select l.id, l.name, p.id as "partId", p.name as part, s.id as "skillId", s.name as skill, l.family, l.openings
     from ladder l join part p on p.team_id = l.team_id and p.id = l.part_id
     join skill s on s.team_id = p.team_id and s.id = p.skill_id
     where l.team_id = $1 and l.retired_at is null and p.retired_at is null and s.retired_at is null
     order by s.position, p.position, l.position, l.id`,
    [tx.teamId],
  );
  const rungs = await rungsByLadder(tx);
  return rows.map((row) => ({
    ...row,
    openings: openingsSchema.catch([]).parse(row.openings),
    rungs: rungs.get(row.id) ?? [],
  }));
}

async function rungsByLadder(tx: TeamPg): Promise<Map<string, GapRung[]>> {
  const { rows } = await tx.client.query<HistoryRung & { family: Family; equipment: string[] }>(
    `select r.id, coalesce(r.key, r.id::text) as key, l.id as "ladderId", l.name as ladder, s.name as skill, p.name as part, r.position, r.name,
       coalesce(d.family, l.family) as family, d.measure, d.each_side as "eachSide", d.each_is_leg as "eachIsLeg",
       json_build_object('sets', r.pass_sets, 'target', r.pass_target, 'days', r.pass_days, 'tries', r.pass_tries) as pass,
       d.seconds_per_rep as "secondsPerRep", d.share, d.helping_share as "helpingShare", d.weights,
       d.upside_down as "upsideDown",
       r.usual_weeks as "usualWeeks", r.needs_film as "needsFilm", coalesce(l.faults, '{}') as faults,
       coalesce(d.equipment, '{}') as equipment
     from rung r
     join drill d on d.team_id = r.team_id and d.id = r.drill_id
     join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
     join part p on p.team_id = l.team_id and p.id = l.part_id
     join skill s on s.team_id = p.team_id and s.id = p.skill_id
     where r.team_id = $1 and r.retired_at is null
     order by r.ladder_id, r.position, r.id`,
    [tx.teamId],
  );
  const byLadder = new Map<string, GapRung[]>();
  for (const row of rows) byLadder.set(row.ladderId, [...(byLadder.get(row.ladderId) ?? []), row]);
  return byLadder;
}
