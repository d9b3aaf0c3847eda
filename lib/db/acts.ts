import type { Flagged, ProposedStep, Subject } from '#lib/domain/finding.ts';
import type { CheckKind, Level, Side, Tier } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';
import { notHeldBack } from './good-news.ts';

/** The columns of a reason that an act may change: kept in the event, so that an undo restores them exactly. */
export type ReasonHold = {
  id: string;
  state: string;
  asideUntil: string | null;
  asideUntilWorse: boolean;
  withClientUntil: string | null;
  clearNights: number;
  closedAt: string | null;
  closedWhy: string | null;
  /** Folded as known since this morning, with these words; null: not folded. */
  knownOn: string | null;
  knownWords: string | null;
};

export type ActReason = ReasonHold & {
  kind: CheckKind;
  level: Level;
  points: number;
  tier: Tier | null;
  sentence: string;
  subject: Subject;
  step: ProposedStep;
  evidence: Flagged['evidence'];
  raisedAt: string;
};

const HOLD = `id, state, aside_until as "asideUntil", aside_until_worse as "asideUntilWorse",
  with_client_until as "withClientUntil", clear_nights as "clearNights", closed_at as "closedAt", closed_why as "closedWhy",
  known_on as "knownOn", known_words as "knownWords"`;

type Dated<T> = Omit<T, 'closedAt'> & { closedAt: Date | null };

/** The client's name, when the client is of this team. */
export async function findActClient(
  tx: TeamPg,
  clientId: string,
): Promise<{ name: string; zone: string } | undefined> {
  const { rows } = await tx.client.query<{ name: string; zone: string }>(
    'select name, zone from client where team_id = $1 and id = $2',
    [tx.teamId, clientId],
  );
  return rows[0];
}

/** The client's reasons that stand on the board (no step up beside danger), locked until the act is written. */
export function lockOpenReasons(tx: TeamPg, clientId: string): Promise<ActReason[]> {
  return openReasons(tx, clientId, 'for update');
}

/** The same, only to be read. */
export function listOpenReasons(tx: TeamPg, clientId: string): Promise<ActReason[]> {
  return openReasons(tx, clientId, '');
}

async function openReasons(tx: TeamPg, clientId: string, lock: '' | 'for update'): Promise<ActReason[]> {
  const { rows } = await tx.client.query<Dated<ActReason> & { raised: Date }>(
    `select ${HOLD}, kind, level, points, tier, sentence, subject, step, evidence, raised_at as raised from reason r
     where team_id = $1 and client_id = $2 and closed_at is null and state = 'open' and tier is not null
       and ${notHeldBack('r')}
     order by points desc, raised_at, id ${lock}`,
    [tx.teamId, clientId],
  );
  return rows.map(({ raised, ...row }) => ({ ...row, closedAt: null, raisedAt: raised.toISOString() }));
}

export async function lockReasons(tx: TeamPg, ids: string[]): Promise<ReasonHold[]> {
  const { rows } = await tx.client.query<Dated<ReasonHold>>(
    `select ${HOLD} from reason where team_id = $1 and id = any($2::uuid[]) order by id for update`,
    [tx.teamId, ids],
  );
  return rows.map((row) => ({ ...row, closedAt: row.closedAt?.toISOString() ?? null }));
}

export async function writeHolds(tx: TeamPg, holds: ReasonHold[], at: Date): Promise<void> {
  await tx.client.query(
    `update reason r set state = n.state, aside_until = n."asideUntil", aside_until_worse = n."asideUntilWorse",
       with_client_until = n."withClientUntil", clear_nights = n."clearNights", closed_at = n."closedAt",
       closed_why = n."closedWhy", known_on = n."knownOn", known_words = n."knownWords", updated_at = $3
     from jsonb_to_recordset($2::jsonb) as n(id uuid, state text, "asideUntil" date, "asideUntilWorse" boolean,
       "withClientUntil" date, "clearNights" int, "closedAt" timestamptz, "closedWhy" text, "knownOn" date,
       "knownWords" text)
     where r.team_id = $1 and r.id = n.id`,
    [tx.teamId, JSON.stringify(holds), at],
  );
}

/** What taking a proposed step left behind: versions of the plan, the placements before them, and rows by their id. */
export type StepRecords = {
  planVersions: number[];
  placementsBefore: PlacementRow[];
  filmId: string | null;
  limitId: string | null;
  wordId: string | null;
  /** Goals that ended, to be opened again. */
  goalIds: string[];
};
export type PlacementRow = { ladderId: string; side: Side; rungId: string; from: string; why: string };

/** What an act left behind, in the body of its events. `before` and `after` are of that event's reason. */
export type ActBody = {
  actId: string;
  clientId: string;
  act: string;
  words: string;
  before: ReasonHold | null;
  after: ReasonHold | null;
  stepId?: string;
  /** What a proposed step changed beside the reasons. */
  taken?: StepRecords;
  verdictId?: string;
  answerId?: string;
  questionId?: string;
  seenMarkId?: string;
  /** The assistant who prepared what a coach approved. */
  preparedById?: string;
};
export type ActEvent = { reasonId: string; what: string; level: Level | null; body: ActBody };

export async function insertActEvents(
  tx: TeamPg,
  events: ActEvent[],
  by: { memberId: string | null; at: Date },
): Promise<void> {
  await tx.client.query(
    `insert into reason_event (team_id, reason_id, by_id, at, what, level, body)
     select $1, n."reasonId", $3, $4, n.what, n.level, n.body
     from jsonb_to_recordset($2::jsonb) as n("reasonId" uuid, what text, level text, body jsonb)`,
    [tx.teamId, JSON.stringify(events), by.memberId, by.at],
  );
}

/** The events of one act, oldest first; an undone act has an event `undone` among them. */
export async function listActEvents(tx: TeamPg, actId: string): Promise<ActEvent[]> {
  const { rows } = await tx.client.query<ActEvent>(
    `select reason_id as "reasonId", what, level, body from reason_event
     where team_id = $1 and body->>'actId' = $2 order by at, id`,
    [tx.teamId, actId],
  );
  return rows;
}

/** Those of the clients who are of this team, with the kinds that stand on their row now. Sorted by id: see locks. */
export async function listActClients(
  tx: TeamPg,
  clientIds: string[],
): Promise<{ clientId: string; name: string; kinds: CheckKind[] }[]> {
  const { rows } = await tx.client.query<{ clientId: string; name: string; kinds: CheckKind[] }>(
    `select c.id as "clientId", c.name, array(select r.kind from reason r
       where r.team_id = c.team_id and r.client_id = c.id and r.closed_at is null and r.state = 'open'
         and r.tier is not null) as kinds
     from client c where c.team_id = $1 and c.id = any($2::uuid[]) order by c.id`,
    [tx.teamId, clientIds],
  );
  return rows;
}
