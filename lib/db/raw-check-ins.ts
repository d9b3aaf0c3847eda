import { type SeenOnFilm, withVerdict } from '#lib/domain/clip-verdict.ts';
import type { HistoryCheckIn, HistoryPain, HistorySet } from '#lib/domain/history.ts';
import type { TeamPg } from './client.ts';
import { setKey } from './set-verdicts.ts';

type HeadRow = Omit<HistoryCheckIn, 'sentAt' | 'sets' | 'pain' | 'dangerSigns'> & {
  clientId: string;
  sentAt: Date;
};

const HEAD = `client_id as "clientId", id, date, zone, sent_at as "sentAt", kind, session, effort, minutes, ground,
  sleep_hours as "sleepHours", nothing_hurts as "nothingHurts", words`;

/**
 * The effective check-ins (the latest correction of each, nothing deleted) from the tables they were written to.
 * `dates: null` reads all of them. Two queries, whatever the number of clients.
 */
export async function listEffectiveCheckIns(
  tx: TeamPg,
  clientIds: string[],
  dates: string[] | null,
): Promise<Map<string, HistoryCheckIn[]>> {
  const { rows: heads } = await tx.client.query<HeadRow>(
    `select ${HEAD} from check_in
     where team_id = $1 and client_id = any($2::uuid[]) and replaced_at is null and deleted_at is null
       and ($3::date[] is null or date = any($3::date[]))`,
    [tx.teamId, clientIds, dates],
  );
  const byClient = new Map<string, HistoryCheckIn[]>(clientIds.map((id) => [id, []]));
  for (const { clientId, checkIn } of await withParts(tx, heads)) byClient.get(clientId)?.push(checkIn);
  for (const [id, checkIns] of byClient) byClient.set(id, inOrder(checkIns));
  return byClient;
}

/** What a client took back from a date on, whole as it was sent, in no order; instants are ISO. */
export async function listDeletedCheckIns(
  tx: TeamPg,
  clientId: string,
  from: string,
): Promise<{ checkIn: HistoryCheckIn; deletedAt: string }[]> {
  const { rows: heads } = await tx.client.query<HeadRow & { deletedAt: Date }>(
    `select ${HEAD}, deleted_at as "deletedAt" from check_in
     where team_id = $1 and client_id = $2 and date >= $3::date and deleted_at is not null`,
    [tx.teamId, clientId, from],
  );
  const deletedAt = new Map(heads.map((head) => [head.id, head.deletedAt.toISOString()]));
  const bare = heads.map(({ deletedAt: _, ...head }) => head);
  return (await withParts(tx, bare)).flatMap(({ checkIn }) => {
    const at = deletedAt.get(checkIn.id);
    return at === undefined ? [] : [{ checkIn, deletedAt: at }];
  });
}

/** Check-ins of a client that were corrected, from a date on, each as it was sent, with the id of what replaced it. */
export async function listCorrectedCheckIns(
  tx: TeamPg,
  clientId: string,
  from: string,
): Promise<{ checkIn: HistoryCheckIn; correctedBy: string }[]> {
  const { rows: heads } = await tx.client.query<HeadRow & { correctedBy: string }>(
    `select ${HEAD}, (select n.id from check_in n where n.team_id = $1 and n.corrects_id = check_in.id
       order by n.received_at limit 1) as "correctedBy" from check_in
     where team_id = $1 and client_id = $2 and date >= $3::date and replaced_at is not null`,
    [tx.teamId, clientId, from],
  );
  const by = new Map(heads.map((head) => [head.id, head.correctedBy]));
  const bare = heads.map(({ correctedBy: _, ...head }) => head);
  return (await withParts(tx, bare)).flatMap(({ checkIn }) => {
    const correctedBy = by.get(checkIn.id);
    return correctedBy ? [{ checkIn, correctedBy }] : [];
  });
}

/** Rows that come with a set each are many: a long history is put together part by part. */
const HEADS_AT_ONCE = 400;

async function withParts(
  tx: TeamPg,
  heads: readonly HeadRow[],
): Promise<{ clientId: string; checkIn: HistoryCheckIn }[]> {
  const all: { clientId: string; checkIn: HistoryCheckIn }[] = [];
  for (let from = 0; from < heads.length; from += HEADS_AT_ONCE) {
    for (const one of await partsAdded(tx, heads.slice(from, from + HEADS_AT_ONCE))) all.push(one);
  }
  return all;
}

async function partsAdded(
  tx: TeamPg,
  heads: readonly HeadRow[],
): Promise<{ clientId: string; checkIn: HistoryCheckIn }[]> {
  const { sets, pain, signs, seen } = await partsOf(
    tx,
    heads.map((head) => head.id),
  );
  const onFilm = (id: string, set: HistorySet) => {
    const verdict = seen.get(id)?.find((one) => setKey(one) === setKey(set));
    return verdict ? withVerdict(set, verdict) : set;
  };
  return heads.map(({ clientId, sentAt, ...head }) => ({
    clientId,
    checkIn: {
      ...head,
      sentAt: sentAt.toISOString(),
      sets: (sets.get(head.id) ?? []).map((set) => onFilm(head.id, set)),
      pain: pain.get(head.id) ?? [],
      dangerSigns: signs.get(head.id) ?? [],
    },
  }));
}

/** One order for check-ins and for what is inside them, whichever table they came from. */
export function inOrder(checkIns: HistoryCheckIn[]): HistoryCheckIn[] {
  return checkIns
    .map((checkIn) => ({
      ...checkIn,
      sets: sortedBy(
        checkIn.sets,
        (set) => `${set.rungId} ${set.side} ${String(set.index).padStart(4, '0')}`,
      ),
      pain: sortedBy(checkIn.pain, (score) => `${score.region} ${score.side} ${score.moment}`),
      dangerSigns: sortedBy(checkIn.dangerSigns, (told) => told.sign),
    }))
    .sort((a, b) => compare(`${a.date} ${a.sentAt} ${a.id}`, `${b.date} ${b.sentAt} ${b.id}`));
}

function sortedBy<T>(items: T[], keyOf: (item: T) => string): T[] {
  return [...items].sort((a, b) => compare(keyOf(a), keyOf(b)));
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

type Parts = {
  sets: HistorySet;
  pain: HistoryPain;
  signs: HistoryCheckIn['dangerSigns'][number];
  seen: SeenOnFilm & Pick<HistorySet, 'rungId' | 'side' | 'index'>;
};

const PARTS: Record<keyof Parts, { from: string; columns: string }> = {
  sets: {
    from: 'check_in_set told where $THEIRS',
    columns: `rung_id as "rungId", side, idx as index, planned, value, tried, how, clean, coalesce(faults, '{}') as faults, support,
      added_kg as "addedKg"`,
  },
  pain: { from: 'pain_score told where $THEIRS', columns: 'region, side, moment, value, kind, usual' },
  signs: {
    from: 'danger_sign_told told where $THEIRS',
    columns: 'sign, gone_within_minute as "goneWithinMinute", region, side',
  },
  // The newest verdict on each set.
  seen: {
    from: `(select distinct on (check_in_id, rung_id, side, idx) * from set_verdict told where $THEIRS and undone_at is null
      order by check_in_id, rung_id, side, idx, at desc, id desc) told`,
    columns: `rung_id as "rungId", side, idx as index, verdict, coalesce(faults, '{}') as faults`,
  },
};

const PARTS_OF = Object.entries(PARTS)
  .map(
    ([kind, { from, columns }]) =>
      `select '${kind}' as kind, told.check_in_id as "checkInId", (select to_json(part) from (select ${columns}) part) as part
       from ${from.replace('$THEIRS', 'told.team_id = $1 and told.check_in_id = any($2::uuid[])')}`,
  )
  .join(' union all ');

/** What check-ins have inside them, by check-in, and what was seen of their sets on film: one query for all. */
async function partsOf(tx: TeamPg, checkInIds: string[]) {
  const parts: { [Kind in keyof Parts]: Map<string, Parts[Kind][]> } = {
    sets: new Map(),
    pain: new Map(),
    signs: new Map(),
    seen: new Map(),
  };
  const { rows } = await tx.client.query<{ kind: keyof Parts; checkInId: string; part: never }>(PARTS_OF, [
    tx.teamId,
    checkInIds,
  ]);
  for (const { kind, checkInId, part } of rows) {
    const there = parts[kind].get(checkInId);
    if (there) there.push(part);
    else parts[kind].set(checkInId, [part]);
  }
  return parts;
}
