import type { StoredReason } from '#lib/checks/types.ts';
import type { Flagged } from '#lib/domain/finding.ts';
import type { CheckKind, Level, Tier } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

/** A stored reason with what the night must know beside it. `client-page`: not yet counted, never on the board. */
export type ReasonRow = Omit<StoredReason, 'state' | 'fingerprint'> & {
  clientId: string;
  state: StoredReason['state'] | 'client-page';
  evidence: Flagged['evidence'];
  subject: Flagged['subject'];
  short: string;
  since: string;
  step: Flagged['step'];
  clears: string;
  working: Flagged['working'];
  /** Last touched by a night or a person. */
  touchedAt: string;
};

type Row = Omit<ReasonRow, 'raisedAt' | 'closedAt' | 'touchedAt'> & {
  raisedAt: Date;
  closedAt: Date | null;
  touchedAt: Date;
};

/** Of each kind and subject the open reason, else the one closed last: it may reopen, or stay done. */
export async function listReasons(tx: TeamPg, clientIds: string[]): Promise<Map<string, ReasonRow[]>> {
  const { rows } = await tx.client.query<Row>(
    `select distinct on (client_id, kind, subject_key) id, client_id as "clientId", kind, subject_key as "subjectKey", subject, level, points, tier, state,
       aside_until as "asideUntil", aside_until_worse as "asideUntilWorse", with_client_until as "withClientUntil",
       clear_nights as "clearNights", raised_at as "raisedAt", closed_at as "closedAt", closed_why as "closedWhy",
       sentence, short, since, step, clears, evidence, working, updated_at as "touchedAt"
     from reason
     where team_id = $1 and client_id = any($2::uuid[])
     order by client_id, kind, subject_key, closed_at desc nulls first, raised_at desc, id`,
    [tx.teamId, clientIds],
  );
  const byClient = new Map<string, ReasonRow[]>(clientIds.map((id) => [id, []]));
  for (const row of rows) {
    byClient.get(row.clientId)?.push({
      ...row,
      raisedAt: row.raisedAt.toISOString(),
      closedAt: row.closedAt?.toISOString() ?? null,
      touchedAt: row.touchedAt.toISOString(),
    });
  }
  return byClient;
}

export type NewReason = {
  id: string;
  clientId: string;
  state: 'open' | 'client-page';
  outcome: Flagged;
  at: string;
  rulesVersion: string;
  settingsVersion: number;
  knownFrom: string;
};

/** Returns the ids that are new. One that is open already stays: the database allows one a client, kind and subject. */
export async function insertReasons(tx: TeamPg, reasons: NewReason[]): Promise<Set<string>> {
  if (reasons.length === 0) return new Set();
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into reason (team_id, id, client_id, kind, subject_key, subject, level, points, tier, sentence, short,
       since, step, clears, evidence, working, state, rules_version, settings_version, raised_at, updated_at, known_from)
     select $1, n.id, n."clientId", n.outcome->>'kind', n.outcome->'subject'->>'key', n.outcome->'subject',
       n.outcome->>'level', (n.outcome->>'points')::int, n.outcome->>'tier', n.outcome->>'sentence', n.outcome->>'short',
       (n.outcome->>'since')::date, n.outcome->'step', n.outcome->>'clears', n.outcome->'evidence', n.outcome->'working',
       n.state, n."rulesVersion", n."settingsVersion", n.at, n.at, n."knownFrom"
     from jsonb_to_recordset($2::jsonb) as n(id uuid, "clientId" uuid, state text, outcome jsonb, at timestamptz,
       "rulesVersion" text, "settingsVersion" int, "knownFrom" date)
     on conflict (team_id, client_id, kind, subject_key) where closed_at is null do nothing
     returning id`,
    [tx.teamId, JSON.stringify(reasons)],
  );
  return new Set(rows.map((row) => row.id));
}

/** New contents of a stored reason: what tonight says, and the state it has now. */
export type ReasonContents = {
  id: string;
  state: ReasonRow['state'];
  outcome: Flagged;
  at: string;
  rulesVersion: string;
  settingsVersion: number;
  /** It came back from put aside, with the client or closed: what held it is over. */
  back: boolean;
  /** Worse than it was: what a coach folded as known unfolds. */
  worse: boolean;
};

export async function updateReasonContents(tx: TeamPg, reasons: ReasonContents[]): Promise<void> {
  if (reasons.length === 0) return;
  await tx.client.query(
    `update reason r set level = n.outcome->>'level', points = (n.outcome->>'points')::int, tier = n.outcome->>'tier',
       subject = n.outcome->'subject', sentence = n.outcome->>'sentence', short = n.outcome->>'short',
       step = n.outcome->'step', clears = n.outcome->>'clears', evidence = n.outcome->'evidence',
       working = n.outcome->'working', since = (n.outcome->>'since')::date, state = n.state, clear_nights = 0,
       rules_version = n."rulesVersion", settings_version = n."settingsVersion", updated_at = n.at,
       aside_until = case when n.back then null else r.aside_until end,
       aside_until_worse = case when n.back then false else r.aside_until_worse end,
       with_client_until = case when n.back then null else r.with_client_until end,
       closed_at = case when n.back then null else r.closed_at end,
       closed_why = case when n.back then null else r.closed_why end,
       known_on = case when n.back or n.worse then null else r.known_on end,
       known_words = case when n.back or n.worse then null else r.known_words end
     from jsonb_to_recordset($2::jsonb)
       as n(id uuid, state text, outcome jsonb, at timestamptz, "rulesVersion" text, "settingsVersion" int, back boolean,
         worse boolean)
     where r.team_id = $1 and r.id = n.id`,
    [tx.teamId, JSON.stringify(reasons)],
  );
}

/** A clear night counted, or the reason closed by it. */
export type ReasonRest = { id: string; clearNights: number; closedWhy: string | null; at: string };

export async function updateReasonRest(tx: TeamPg, reasons: ReasonRest[]): Promise<void> {
  if (reasons.length === 0) return;
  await tx.client.query(
    `update reason r set clear_nights = n."clearNights", updated_at = n.at,
       state = case when n."closedWhy" is null then r.state else 'closed' end,
       closed_at = case when n."closedWhy" is null then r.closed_at else n.at end,
       closed_why = coalesce(n."closedWhy", r.closed_why)
     from jsonb_to_recordset($2::jsonb) as n(id uuid, "clearNights" int, "closedWhy" text, at timestamptz)
     where r.team_id = $1 and r.id = n.id`,
    [tx.teamId, JSON.stringify(reasons)],
  );
}

export type NewReasonEvent = {
  reasonId: string;
  at: string;
  night: string | null;
  what: 'raised' | 'reopened' | 'worse' | 'back' | 'counted' | 'closed';
  level: Level | null;
  body: { kind?: CheckKind; tier?: Tier | null; why?: string };
};

/** The life of reasons, append-only. */
export async function insertReasonEvents(tx: TeamPg, events: NewReasonEvent[]): Promise<void> {
  if (events.length === 0) return;
  await tx.client.query(
    `insert into reason_event (team_id, reason_id, at, night, what, level, body)
     select $1, n."reasonId", n.at, n.night, n.what, n.level, n.body
     from jsonb_to_recordset($2::jsonb)
       as n("reasonId" uuid, at timestamptz, night date, what text, level text, body jsonb)`,
    [tx.teamId, JSON.stringify(events)],
  );
}
