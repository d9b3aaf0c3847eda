import { RULES_VERSION } from '#lib/checks/thresholds.ts';
import type { TeamPg } from '#lib/db/client.ts';
import type { Subject } from '#lib/domain/finding.ts';
import type { HistoryStep } from '#lib/domain/history.ts';
import { addDays } from '../calendar.ts';
import type { DemoClient } from '../life.ts';
import { type PastReason, pastReasons } from '../past.ts';
import { insertRows } from './insert.ts';
import type { Place } from './place.ts';

/** The reason of each step, and what was proposed for it. */
export type ReasonsOfSteps = ReadonlyMap<HistoryStep, { reasonId: string; kind: string }>;

const REVIEW_DAYS = 14;

/** Reasons of the months before the first night; returns those for which a step was taken. */
export async function writePastReasons(
  tx: TeamPg,
  clients: DemoClient[],
  place: Place,
  firstNight: string,
): Promise<ReasonsOfSteps> {
  const rows = clients.flatMap((client) =>
    pastReasons(client, firstNight).map((past, at) => ({
      past,
      id: idFor(client.history.client.id, at),
      client_id: client.history.client.id,
    })),
  );
  await insertRows(
    tx,
    'reason',
    {
      id: 'uuid',
      client_id: 'uuid',
      kind: 'text',
      subject_key: 'text',
      subject: 'jsonb',
      level: 'text',
      points: 'int',
      tier: 'text',
      sentence: 'text',
      short: 'text',
      since: 'date',
      step: 'jsonb',
      clears: 'text',
      evidence: 'jsonb',
      working: 'jsonb',
      state: 'text',
      with_client_until: 'date',
      rules_version: 'text',
      raised_at: 'timestamptz',
      updated_at: 'timestamptz',
      known_from: 'date',
      closed_at: 'timestamptz',
      closed_why: 'text',
    },
    rows.map(({ past, id, client_id }) => ({ id, client_id, ...columnsOf(past, place) })),
  );
  return new Map(
    rows.flatMap(({ past, id }) =>
      past.step ? [[past.step, { reasonId: id, kind: past.outcome.step.kind }] as const] : [],
    ),
  );
}

function columnsOf({ outcome, knownFrom, goneOn, step }: PastReason, place: Place) {
  const { status: _, subject, ...said } = outcome;
  const inTeam = inTeamOf(subject, place);
  const raised = `${addDays(knownFrom, 1)}T03:00:00Z`;
  const closed = goneOn === null ? null : `${addDays(goneOn, 1)}T03:00:00Z`;
  const until = step ? (step.reviewOn ?? addDays(step.takenOn, REVIEW_DAYS)) : null;
  return {
    ...said,
    subject: inTeam,
    subject_key: inTeam.key,
    state: closed ? 'closed' : 'with-client',
    with_client_until: closed ? null : until,
    rules_version: RULES_VERSION,
    raised_at: raised,
    updated_at: closed ?? raised,
    known_from: knownFrom,
    closed_at: closed,
    closed_why: closed ? '2 clear nights' : null,
  };
}

/** Ladders and rungs by the ids they have in the team. */
function inTeamOf(subject: Subject, { ladderIds, rungIds }: Place): Subject {
  const idIn = (key: string) => ladderIds.get(key) ?? rungIds.get(key) ?? key;
  return {
    ...subject,
    key: subject.key.split(':').map(idIn).join(':'),
    ...(subject.ladderId !== undefined && { ladderId: idIn(subject.ladderId) }),
    ...(subject.rungId !== undefined && { rungId: idIn(subject.rungId) }),
  };
}

/** The same ids every time: the client's, with the number of the reason at its end. */
function idFor(clientId: string, at: number): string {
  const HEX = 16;
  const WIDTH = 12;
  return clientId.slice(0, -WIDTH) + (at + 1).toString(HEX).padStart(WIDTH, '0');
}
