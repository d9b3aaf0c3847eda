import { ownerQuery } from '#tests/integration/support/database.ts';

/** Everything a night writes for a team, column for column. */
export async function allRows(teamId: string): Promise<string> {
  const tables = ['reason', 'reason_event', 'night_client', 'night_run'];
  const rows = await Promise.all(
    tables.map((table) =>
      ownerQuery(`select to_jsonb(t) as row from ${table} t where team_id = $1 order by to_jsonb(t)::text`, [
        teamId,
      ]),
    ),
  );
  return JSON.stringify(rows);
}

/**
 * What nights say for a team, without what may differ between two teams with the same data: ids, and the times when
 * the work was done. `names` are the clients' names.
 */
export async function meaning(teamId: string): Promise<unknown[]> {
  const reasons = await ownerQuery(
    `select c.name, r.kind, r.subject_key, r.level, r.points, r.tier, r.sentence, r.state, r.clear_nights, r.raised_at,
       r.updated_at, r.closed_at, r.closed_why, r.evidence::text, r.known_from,
       (select json_agg(json_build_array(e.what, e.at, e.night, e.level, e.body) order by e.at, e.what)
        from reason_event e where e.team_id = r.team_id and e.reason_id = r.id) as events
     from reason r join client c on c.team_id = r.team_id and c.id = r.client_id
     where r.team_id = $1 order by c.name, r.kind, r.subject_key, r.raised_at`,
    [teamId],
  );
  const nights = await ownerQuery(
    `select c.name, n.local_date, n.done_at is not null as done, n.failed_at is not null as failed, n.findings
     from night_client n join client c on c.team_id = n.team_id and c.id = n.client_id
     where n.team_id = $1 order by c.name, n.local_date`,
    [teamId],
  );
  const runs = await ownerQuery(
    `select local_date, clients_due, clients_done, clients_failed, finished_at is not null as finished
     from night_run where team_id = $1 order by local_date`,
    [teamId],
  );
  return [reasons, nights, runs];
}
