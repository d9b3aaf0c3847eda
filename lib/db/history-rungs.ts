import type { HistoryRung } from '#lib/domain/history.ts';
import type { TeamPg } from './client.ts';

/**
 * The rungs with these ids, retired or not, and the next rung in use of each, with what their drill, ladder, part and
 * skill say about them. Of two at one position the one in use comes first.
 */
export async function listHistoryRungs(tx: TeamPg, rungIds: string[]): Promise<HistoryRung[]> {
  const { rows } = await tx.client.query<HistoryRung>(
    `select r.id, r.key, l.id as "ladderId", l.name as ladder, s.name as skill, p.name as part, r.position, r.name,
       coalesce(d.family, l.family) as family, d.measure, d.each_side as "eachSide", d.each_is_leg as "eachIsLeg",
       json_build_object('sets', r.pass_sets, 'target', r.pass_target, 'days', r.pass_days, 'tries', r.pass_tries) as pass,
       d.seconds_per_rep as "secondsPerRep", d.share, d.helping_share as "helpingShare", d.weights,
       d.upside_down as "upsideDown",
       r.usual_weeks as "usualWeeks", r.needs_film as "needsFilm", coalesce(l.faults, '{}') as faults
     from rung r
     join drill d on d.team_id = r.team_id and d.id = r.drill_id
     join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
     join part p on p.team_id = l.team_id and p.id = l.part_id
     join skill s on s.team_id = p.team_id and s.id = p.skill_id
     where r.team_id = $1 and (r.id = any($2::uuid[]) or r.retired_at is null and exists (
       select from rung below where below.team_id = r.team_id and below.ladder_id = r.ladder_id
         and below.position = r.position - 1 and below.id = any($2::uuid[])))
     order by l.id, r.position, r.retired_at is not null, r.id`,
    [tx.teamId, rungIds],
  );
  return rows;
}
