import type { SinceOutcome } from '#lib/checks/better-since/types.ts';
import type { ProposedStep } from '#lib/domain/finding.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';
import type { OutcomeEvidence } from './outcomes.ts';

/** What one window came to. */
export type ToldOutcome = { windowDays: number; outcome: SinceOutcome; evidence: OutcomeEvidence };

export type StepKind = ProposedStep['kind'];

/** A step that was taken and not undone, or a reason that was left alone, with what its windows came to so far. */
export type FollowedRow = {
  /** Of the step, or of the reason that was left alone. */
  id: string;
  clientId: string;
  clientName: string;
  reasonId: string | null;
  /** What the step was taken for; null: for no reason that is known. */
  reasonKind: CheckKind | null;
  sentence: string;
  /** The kind of the step taken, or of the one that was proposed and not taken. */
  stepKind: StepKind;
  words: string;
  by: string;
  from: string;
  told: ToldOutcome[];
};

type Asked = {
  /** Days, both with; of the step, or from which the reason was known. */
  from: string;
  to: string;
  clientId?: string | undefined;
  /** The coach of the client. */
  coachId?: string | undefined;
  kind?: CheckKind | undefined;
};

const TOLD = (table: string, column: string, id: string) =>
  `coalesce((select jsonb_agg(jsonb_build_object('windowDays', o.window_days, 'outcome', o.outcome, 'evidence', o.evidence)
     order by o.window_days) from ${table} o where o.team_id = $1 and o.${column} = ${id}), '[]') as told`;

const ASKED = `($4::uuid is null or c.id = $4) and ($5::uuid is null or c.coach_id = $5) and ($6::text is null or r.kind = $6)`;

/** Steps taken in a span of days, newest first. */
export async function listStepsTaken(tx: TeamPg, asked: Asked): Promise<FollowedRow[]> {
  const { rows } = await tx.client.query<FollowedRow>(
    `select s.id, s.client_id as "clientId", c.name as "clientName", s.reason_id as "reasonId", r.kind as "reasonKind",
       coalesce(r.sentence, '') as sentence, s.kind as "stepKind", s.words, m.name as by, s.taken_on as "from",
       ${TOLD('step_outcome', 'step_id', 's.id')}
     from step_taken s join client c on c.team_id = s.team_id and c.id = s.client_id
     join member m on m.team_id = s.team_id and m.id = s.by_id
     left join reason r on r.team_id = s.team_id and r.id = s.reason_id
     where s.team_id = $1 and s.undone_at is null and s.taken_on between $2 and $3 and ${ASKED}
     order by s.taken_on desc, c.name, s.id`,
    valuesOf(tx, asked),
  );
  return rows;
}

/** Reasons known from a span of days for which nothing was done, as far as a window of theirs has been told. */
export async function listReasonsLeftAlone(tx: TeamPg, asked: Asked): Promise<FollowedRow[]> {
  const { rows } = await tx.client.query<FollowedRow>(
    `select r.id, r.client_id as "clientId", c.name as "clientName", r.id as "reasonId", r.kind as "reasonKind",
       r.sentence, r.step->>'kind' as "stepKind", '' as words, '' as by, r.known_from as "from",
       ${TOLD('reason_outcome', 'reason_id', 'r.id')}
     from reason r join client c on c.team_id = r.team_id and c.id = r.client_id
     where r.team_id = $1 and r.known_from between $2 and $3 and ${ASKED}
       and exists (select from reason_outcome o where o.team_id = r.team_id and o.reason_id = r.id)
     order by r.known_from desc, c.name, r.id`,
    valuesOf(tx, asked),
  );
  return rows;
}

function valuesOf(tx: TeamPg, { from, to, clientId, coachId, kind }: Asked) {
  return [tx.teamId, from, to, clientId ?? null, coachId ?? null, kind ?? null];
}
