import { type TeamScope, withTeamPg } from './client.ts';

/** A table that is about the team and not about one client; `without`: columns that are secrets or of the product itself. */
export type TeamTable = {
  readonly name: string;
  readonly table: string;
  readonly without: readonly string[];
};

const table = (name: string, of: string, ...without: string[]): TeamTable => ({ name, table: of, without });

/** What leaves with a team beside its clients, by the name of the file. */
export const TEAM_TABLES: readonly TeamTable[] = [
  table('skills', 'skill'),
  table('parts', 'part'),
  table('ladders', 'ladder'),
  table('drills', 'drill'),
  table('rungs', 'rung'),
  table('support_profiles', 'support_profile'),
  table('swaps', 'swap'),
  table('settings_versions', 'team_settings'),
  table('members', 'member', 'user_id'),
  table('leave_of_assistants', 'member_leave'),
  table('invitations', 'member_invitation', 'token_hash'),
  table('covers', 'cover'),
  table('kept_replies', 'kept_reply'),
  table('kept_plans', 'plan_template'),
  table('views_of_the_board', 'saved_view'),
  table('night_runs', 'night_run'),
  table('record_of_acts', 'audit', 'from_address'),
  table('deleted_clients', 'erasure', 'files_left'),
];

const ROWS_AT_ONCE = 1_000;

/** Names of the columns that leave, in the order of the table. */
export function listTeamColumns(scope: TeamScope, of: TeamTable): Promise<string[]> {
  return withTeamPg(scope, async (tx) => {
    const { rows } = await tx.client.query<{ name: string }>(
      `select column_name::text as name from information_schema.columns
       where table_schema = 'public' and table_name = $1 and column_name <> 'team_id' and column_name <> all($2)
       order by ordinal_position`,
      [of.table, [...of.without]],
    );
    return rows.map((row) => row.name);
  });
}

/** Its rows, a batch at a time, each batch in a transaction of its own: a long download holds none open. */
export async function* readTeamTable(
  scope: TeamScope,
  of: TeamTable,
): AsyncGenerator<Record<string, unknown>[]> {
  let after: string | null = null;
  for (;;) {
    const rows: { id: string; row: Record<string, unknown> }[] = await withTeamPg(scope, async (tx) => {
      const found = await tx.client.query<{ id: string; row: Record<string, unknown> }>(
        `select t.id, to_jsonb(t) - $3::text[] as row from ${of.table} t
         where t.team_id = $1 and ($2::uuid is null or t.id > $2) order by t.id limit ${ROWS_AT_ONCE}`,
        [tx.teamId, after, ['team_id', ...of.without]],
      );
      return found.rows;
    });
    if (rows.length > 0) yield rows.map(({ row }) => row);
    if (rows.length < ROWS_AT_ONCE) return;
    after = rows.at(-1)?.id ?? null;
  }
}

export type TeamClient = { id: string; name: string; standing: string; coach: string };

/** Every client, those who left too, by name. */
export function listTeamClients(scope: TeamScope): Promise<TeamClient[]> {
  return withTeamPg(scope, async (tx) => {
    const { rows } = await tx.client.query<TeamClient>(
      `select c.id, c.name, c.standing, m.name as coach from client c
       join member m on m.team_id = c.team_id and m.id = c.coach_id where c.team_id = $1 order by lower(c.name), c.id`,
      [tx.teamId],
    );
    return rows;
  });
}
