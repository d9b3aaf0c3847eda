import type { Followed } from '#lib/checks/better-since/types.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

/** One window that is over and not told yet: of a step, or of a reason for which no step was taken. */
export type DueOutcome = {
  of: 'step' | 'reason';
  /** Of the step or of the reason. */
  id: string;
  clientId: string;
  windowDays: number;
  followed: Followed;
};

/** `family`: a step for any kind of the family is something done; of ladders, when it is about the same one. */
export type Window = { kind: string; days: number; family: string };

/** Longer back than this a history does not reach far enough to be compared. */
const BACK_DAYS = 300;

type Row = Omit<DueOutcome, 'followed'> & {
  kind: Followed['kind'];
  subject: Followed['subject'];
  evidence: Followed['evidence'];
  from: string;
  stepKind: string | null;
  ladderId: string | null;
  side: Side | null;
  planVersions: number[] | null;
  setLimit: boolean;
};

const NOT_UNDONE = `not exists (select from reason_event u where u.team_id = e.team_id and u.reason_id = e.reason_id
  and u.what = 'undone' and u.body->>'actId' = e.body->>'actId')`;

/** Everything of these clients that is due on the evening of a date, in one query; undone steps are as if never taken. */
export async function listDueOutcomes(
  tx: TeamPg,
  clientIds: readonly string[],
  localDate: string,
  windows: readonly Window[],
): Promise<DueOutcome[]> {
  const { rows } = await tx.client.query<Row>(
    `with span as (select * from jsonb_to_recordset($3::jsonb) as span(kind text, days int, family text))
     select 'step' as of, s.id, s.client_id as "clientId", span.days as "windowDays", r.kind, r.subject, r.evidence,
       s.taken_on as "from", s.kind as "stepKind", s.ladder_id as "ladderId", s.side,
       e.taken->'planVersions' as "planVersions", coalesce(e.taken->>'limitId', '') <> '' as "setLimit"
     from step_taken s
     join reason r on r.team_id = s.team_id and r.id = s.reason_id
     join span on span.kind = r.kind
     left join lateral (select e.body->'taken' as taken from reason_event e
       where e.team_id = s.team_id and e.reason_id = r.id and e.what = 'take' and e.body->>'stepId' = s.id::text
       limit 1) e on true
     where s.team_id = $1 and s.client_id = any($2::uuid[]) and s.undone_at is null
       and s.taken_on + span.days <= $4::date and s.taken_on >= $4::date - ${BACK_DAYS}
       and not exists (select from step_outcome o
         where o.team_id = s.team_id and o.step_id = s.id and o.window_days = span.days)
     union all
     select 'reason', r.id, r.client_id, span.days, r.kind, r.subject, r.evidence, r.known_from, null, null, null, null, false
     from reason r join span on span.kind = r.kind
     where r.team_id = $1 and r.client_id = any($2::uuid[]) and r.tier is not null
       and r.closed_why is distinct from 'entry corrected'
       and r.known_from + span.days <= $4::date and r.known_from >= $4::date - ${BACK_DAYS}
       and not exists (select from reason_outcome o
         where o.team_id = r.team_id and o.reason_id = r.id and o.window_days = span.days)
       and not exists (select from step_taken s join reason o on o.team_id = s.team_id and o.id = s.reason_id
         where s.team_id = r.team_id and s.client_id = r.client_id and s.undone_at is null
           and s.taken_on between r.known_from and r.known_from + span.days
           and o.kind in (select kind from span other where other.family = span.family)
           and (span.family <> 'ladder' or o.id = r.id or o.subject->>'ladderId' = r.subject->>'ladderId'))
       and not exists (select from reason_event e where e.team_id = r.team_id and e.reason_id = r.id and e.what = 'take'
         and e.at < (r.known_from + span.days + 1)::timestamptz and ${NOT_UNDONE})
     order by 3, 2, 4`,
    [tx.teamId, clientIds, JSON.stringify(windows), localDate],
  );
  return rows.map(toDue);
}

function toDue(row: Row): DueOutcome {
  const { kind, subject, evidence, from, stepKind, ladderId, side, planVersions, setLimit } = row;
  return {
    of: row.of,
    id: row.id,
    clientId: row.clientId,
    windowDays: row.windowDays,
    followed: {
      kind,
      subject,
      evidence,
      from,
      step:
        stepKind === null
          ? undefined
          : { kind: stepKind, ladderId, side, planVersions: planVersions ?? [], setLimit },
    },
  };
}

/** What a window came to, as it is kept. */
export type OutcomeEvidence = {
  what: string;
  unit: string;
  before: number | null;
  after: number | null;
  said: string;
  changes: string[];
  from: string;
  until: string;
  rulesVersion: string;
};
export type NewOutcome = Pick<DueOutcome, 'of' | 'id' | 'windowDays'> & {
  outcome: string;
  evidence: OutcomeEvidence;
};

/** Keeps what windows came to; one that is told already stays. */
export async function insertOutcomes(tx: TeamPg, outcomes: readonly NewOutcome[], at: Date): Promise<void> {
  for (const [of, table, column] of [
    ['step', 'step_outcome', 'step_id'],
    ['reason', 'reason_outcome', 'reason_id'],
  ] as const) {
    const rows = outcomes.filter((one) => one.of === of);
    if (rows.length === 0) continue;
    await tx.client.query(
      `insert into ${table} (team_id, ${column}, window_days, outcome, evidence, at)
       select $1, n.id, n."windowDays", n.outcome, n.evidence, $3
       from jsonb_to_recordset($2::jsonb) as n(id uuid, "windowDays" int, outcome text, evidence jsonb)
       on conflict (team_id, ${column}, window_days) do nothing`,
      [tx.teamId, JSON.stringify(rows), at],
    );
  }
}

/** Days before a step that its answer reads: ten weeks of usual load, and the week between. */
const READ_BEFORE_DAYS = 84;

/** Forgets what was told of windows that read one of these days: what is known of them has changed. They are due again. */
export async function forgetOutcomes(
  tx: TeamPg,
  clientId: string,
  span: { from: string; to: string },
): Promise<void> {
  const reads = (from: string) =>
    `${from} + o.window_days >= $3::date and ${from} - ${READ_BEFORE_DAYS} <= $4::date`;
  await tx.client.query(
    `with steps as (delete from step_outcome o using step_taken s
       where o.team_id = $1 and s.team_id = $1 and s.id = o.step_id and s.client_id = $2 and ${reads('s.taken_on')})
     delete from reason_outcome o using reason r
     where o.team_id = $1 and r.team_id = $1 and r.id = o.reason_id and r.client_id = $2 and ${reads('r.known_from')}`,
    [tx.teamId, clientId, span.from, span.to],
  );
}
