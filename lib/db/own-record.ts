import type { KeptCounts } from '#lib/domain/kept-record.ts';
import type { TeamPg } from './client.ts';

export async function countKept(tx: TeamPg, clientId: string): Promise<KeptCounts> {
  const of = (table: string) => `(select count(*)::int from ${table} where team_id = $1 and client_id = $2)`;
  const { rows } = await tx.client.query<KeptCounts>(
    `select ${of('check_in')} as "checkIns", ${of('pain_score')} as "painScores", ${of('question')} as questions,
       ${of('coach_word')} as "coachWords",
       ${of('question_still')} + ${of('still_frame')} as pictures, ${of('clip')} as films, ${of('plan')} as plans,
       ${of('reason')} as reasons, ${of('private_note')} as notes, ${of('limit_rule')} as limits,
       (select min(date) from check_in where team_id = $1 and client_id = $2) as "firstDate",
       (select max(date) from check_in where team_id = $1 and client_id = $2) as "lastDate"`,
    [tx.teamId, clientId],
  );
  const [row] = rows;
  if (!row) throw new Error('a query without a from has no row');
  return row;
}
