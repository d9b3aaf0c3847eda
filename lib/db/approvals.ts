import type { TeamPg } from './client.ts';

export type ApprovalState = 'waiting' | 'approved' | 'sent-back' | 'overtaken' | 'withdrawn';
export type ApprovalRow = {
  id: string;
  clientId: string;
  client: string;
  coachId: string;
  preparedById: string;
  preparedBy: string;
  decidedBy: string | null;
  act: string;
  /** The same JSON that the route of the act takes. */
  body: unknown;
  state: ApprovalState;
  /** Of who sent it back, or why it was closed. */
  words: string;
  actId: string | null;
  /** What stood when it was prepared; what an undo needs once it was approved. */
  context: unknown;
  preparedAt: Date;
  decidedAt: Date | null;
};

const APPROVAL = `select a.id, a.client_id as "clientId", c.name as client, c.coach_id as "coachId",
    a.prepared_by_id as "preparedById", p.name as "preparedBy", d.name as "decidedBy", a.act, a.body, a.state, a.words,
    a.act_id as "actId", a.context, a.prepared_at as "preparedAt", a.decided_at as "decidedAt"
  from approval a
  join client c on c.team_id = a.team_id and c.id = a.client_id
  join member p on p.team_id = a.team_id and p.id = a.prepared_by_id
  left join member d on d.team_id = a.team_id and d.id = a.decided_by_id
  where a.team_id = $1`;

type Asked = { state?: ApprovalState; clientId?: string; preparedById?: string; since?: Date };

/** Prepared acts, the oldest first; of one client, of one person, of one state, decided or prepared since. */
export async function listApprovals(tx: TeamPg, asked: Asked): Promise<ApprovalRow[]> {
  const { rows } = await tx.client.query<ApprovalRow>(
    `${APPROVAL} and ($2::text is null or a.state = $2) and ($3::uuid is null or a.client_id = $3)
       and ($4::uuid is null or a.prepared_by_id = $4)
       and ($5::timestamptz is null or coalesce(a.decided_at, a.prepared_at) >= $5)
     order by a.prepared_at, a.id limit 500`,
    [tx.teamId, asked.state ?? null, asked.clientId ?? null, asked.preparedById ?? null, asked.since ?? null],
  );
  return rows;
}

/** One prepared act, locked until it is decided. */
export async function lockApproval(tx: TeamPg, approvalId: string): Promise<ApprovalRow | undefined> {
  const { rows } = await tx.client.query<ApprovalRow>(`${APPROVAL} and a.id = $2::uuid for update of a`, [
    tx.teamId,
    approvalId,
  ]);
  return rows[0];
}

export async function findApproval(tx: TeamPg, approvalId: string): Promise<ApprovalRow | undefined> {
  const { rows } = await tx.client.query<ApprovalRow>(`${APPROVAL} and a.id = $2::uuid`, [
    tx.teamId,
    approvalId,
  ]);
  return rows[0];
}

export type NewApproval = {
  preparedById: string;
  clientId: string;
  act: string;
  body: unknown;
  context: unknown;
  at: Date;
};

export async function insertApproval(tx: TeamPg, made: NewApproval): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into approval (team_id, prepared_by_id, client_id, act, body, context, prepared_at)
     values ($1, $2, $3, $4, $5, $6, $7) returning id`,
    [
      tx.teamId,
      made.preparedById,
      made.clientId,
      made.act,
      JSON.stringify(made.body),
      JSON.stringify(made.context),
      made.at,
    ],
  );
  return rows[0]?.id ?? '';
}

export type Decided = {
  state: ApprovalState;
  decidedById: string | null;
  at: Date | null;
  words?: string;
  actId?: string | null;
  body?: unknown;
  context?: unknown;
};

export async function setApproval(tx: TeamPg, approvalId: string, decided: Decided): Promise<void> {
  const { state, decidedById, at, words = '', actId = null, body, context } = decided;
  const json = (value: unknown) => (value === undefined ? null : JSON.stringify(value));
  await tx.client.query(
    `update approval set state = $3, decided_by_id = $4, decided_at = $5, words = $6, act_id = $7,
       body = coalesce($8::jsonb, body), context = coalesce($9::jsonb, context)
     where team_id = $1 and id = $2`,
    [tx.teamId, approvalId, state, decidedById, at, words, actId, json(body), json(context)],
  );
}

/** Acts prepared for a client are closed when nothing can come of them any more. */
export async function overtakeApprovalsOf(
  tx: TeamPg,
  clientId: string,
  closed: { words: string; at: Date },
): Promise<void> {
  await tx.client.query(
    `update approval set state = 'overtaken', words = $3, decided_at = $4
     where team_id = $1 and client_id = $2 and state = 'waiting'`,
    [tx.teamId, clientId, closed.words, closed.at],
  );
}

/** How many acts wait: for a coach all of the team, for an assistant own ones; and how many of theirs came back lately. */
export async function countApprovals(
  tx: TeamPg,
  memberId: string | null,
  now: Date,
): Promise<{ waiting: number; own: number; sentBack: number }> {
  const { rows } = await tx.client.query<{ waiting: number; own: number; sentBack: number }>(
    `select count(*) filter (where state = 'waiting')::int as waiting,
       count(*) filter (where state = 'waiting' and prepared_by_id = $2)::int as own,
       count(*) filter (where state in ('sent-back', 'overtaken') and prepared_by_id = $2
         and decided_at > $3::timestamptz - interval '3 days')::int as "sentBack"
     from approval where team_id = $1`,
    [tx.teamId, memberId, now],
  );
  return rows[0] ?? { waiting: 0, own: 0, sentBack: 0 };
}
