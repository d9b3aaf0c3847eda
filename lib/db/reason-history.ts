import type { CheckKind, Tier } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';
import type { ReasonRow } from './reasons.ts';

export type VerdictSaid = { rightToTell: boolean; text: string; by: string };

/** A reason that is closed, with what coaches said of it. */
export type ClosedReason = {
  id: string;
  kind: CheckKind;
  tier: Tier | null;
  sentence: string;
  raisedAt: string;
  closedAt: string;
  closedWhy: string | null;
  verdicts: VerdictSaid[];
};

const VERDICTS = `coalesce((select jsonb_agg(jsonb_build_object('rightToTell', v.right_to_tell, 'text', v.text, 'by', m.name)
    order by v.at, v.id) from verdict v join member m on m.team_id = v.team_id and m.id = v.by_id
  where v.team_id = r.team_id and v.reason_id = r.id and v.undone_at is null), '[]')`;

/** The newest closed reasons of a client, at most `most`. */
export async function listClosedReasons(tx: TeamPg, clientId: string, most: number): Promise<ClosedReason[]> {
  const { rows } = await tx.client.query<
    Omit<ClosedReason, 'raisedAt' | 'closedAt'> & { raisedAt: Date; closedAt: Date }
  >(
    `select r.id, r.kind, r.tier, r.sentence, r.raised_at as "raisedAt", r.closed_at as "closedAt",
       r.closed_why as "closedWhy", ${VERDICTS} as verdicts
     from reason r where r.team_id = $1 and r.client_id = $2 and r.closed_at is not null
     order by r.closed_at desc, r.id limit $3`,
    [tx.teamId, clientId, most],
  );
  return rows.map((row) => ({
    ...row,
    raisedAt: row.raisedAt.toISOString(),
    closedAt: row.closedAt.toISOString(),
  }));
}

export type OneReason = Pick<
  ReasonRow,
  | 'id'
  | 'kind'
  | 'tier'
  | 'state'
  | 'sentence'
  | 'since'
  | 'step'
  | 'clears'
  | 'evidence'
  | 'working'
  | 'subject'
> & {
  closedAt: string | null;
  closedWhy: string | null;
  knownFrom: string | null;
  verdicts: VerdictSaid[];
  /** The settings and the rules that raised or last changed it. */
  settingsVersion: number;
  rulesVersion: string;
};

/** One reason of a client, open or closed; undefined: it is not there, or not of this client. */
export async function findReason(
  tx: TeamPg,
  clientId: string,
  reasonId: string,
): Promise<OneReason | undefined> {
  const { rows } = await tx.client.query<Omit<OneReason, 'closedAt'> & { closedAt: Date | null }>(
    `select r.id, r.kind, r.tier, r.state, r.sentence, r.since, r.step, r.clears, r.evidence, r.working, r.subject,
       r.closed_at as "closedAt", r.closed_why as "closedWhy", r.known_from as "knownFrom", ${VERDICTS} as verdicts,
       r.settings_version as "settingsVersion", r.rules_version as "rulesVersion"
     from reason r where r.team_id = $1 and r.client_id = $2 and r.id = $3`,
    [tx.teamId, clientId, reasonId],
  );
  const [row] = rows;
  return row && { ...row, closedAt: row.closedAt?.toISOString() ?? null };
}
