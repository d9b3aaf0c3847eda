import { randomUUID } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { findTaken, insertTaken, lockTakingIn, tryOut } from '#lib/db/take-in.ts';
import type { Standing } from '#lib/domain/vocabulary.ts';
import { AppError } from '#lib/errors.ts';
import type { LadderMatch } from '#lib/handover/take-in/match-ladders.ts';
import { type ReadBag, readBag } from '#lib/handover/take-in/read-bag.ts';
import { readPackRecord } from '#lib/handover/take-in/read-pack-record.ts';
import type { LeftOut } from '#lib/handover/take-in/rows-to-keep.ts';
import type { PackRecord } from '#lib/schemas/pack-record.ts';
import { exactDate } from '#lib/views/say-date.ts';
import { assertMember } from '../assert-member.ts';
import { keepPack } from './keep-pack.ts';

export type PackSeen = {
  /** Sent back with the same pack to take the client in. */
  manifestSha256: string;
  client: { name: string; zone: string; standing: Standing; under18: boolean; email: string | null };
  from: { team: string; by: string; made: string };
  period: PackRecord['period'];
  /** Rows by table. */
  rows: Record<string, number>;
  ladders: LadderMatch[];
  people: string[];
  consents: { kind: string; toTeam: string; givenAt: string; withdrawnAt: string | null }[];
  leftOut: LeftOut[];
};
export type TakenIn = { clientId: string; seen: PackSeen };

/** Everything that taking this pack in would do, tried whole and taken back. */
export async function lookAtPack(actor: Actor, bytes: Buffer, now: Date): Promise<PackSeen> {
  const { bag, record } = readPack(await readBag(bytes));
  return withTeamPg(actor.scope, (tx) =>
    tryOut(tx, async () => (await takeIn(tx, actor, { bag, record, keepsFiles: false }, now)).seen),
  );
}

/** Takes the client of a pack in, all or nothing. `seen`: the sum of the pack that was looked at. */
export async function takeClientIn(
  actor: Actor,
  { bytes, seen }: { bytes: Buffer; seen: string },
  now: Date,
): Promise<TakenIn> {
  const { bag, record } = readPack(await readBag(bytes));
  if (bag.manifestSha256 !== seen)
    throw new AppError('conflict', 'This is another pack than the one you looked at. Look at it first.');
  return withTeamPg(actor.scope, (tx) => takeIn(tx, actor, { bag, record, keepsFiles: true }, now));
}

function readPack(bag: ReadBag): { bag: ReadBag; record: PackRecord } {
  return { bag, record: readPackRecord(bag) };
}

type Read = { bag: ReadBag; record: PackRecord; keepsFiles: boolean };

async function takeIn(tx: TeamPg, actor: Actor, read: Read, now: Date): Promise<TakenIn> {
  const byId = assertMember(actor);
  const { bag, record } = read;
  const [source] = record.client;
  if (!source) throw new Error('a record without a client');
  await lockTakingIn(tx);
  const taken = await findTaken(tx, source.id);
  if (taken)
    throw new AppError(
      'conflict',
      `${taken.client} is in your team already, since ${exactDate(taken.at.toISOString().slice(0, 10))}, with ${taken.by}. Nothing was taken in.`,
      { fields: { clientId: taken.clientId } },
    );
  const from = infoOf(bag, 'Source-Organization') || 'another team';
  const clientId = randomUUID();
  const kept = await keepPack(tx, { ...read, clientId, byId, from, now });
  const { rows, ladders, people, leftOut } = kept;
  await insertTaken(tx, {
    clientId,
    byId,
    sourceClientId: source.id,
    sourceTeam: from,
    manifestSha256: bag.manifestSha256,
    rows,
    at: now,
  });
  await insertAudit(tx, actor, { action: 'client-taken-in', clientId, fields: Object.keys(rows) });
  const { name, zone, standing, under18, email } = source;
  return {
    clientId,
    seen: {
      manifestSha256: bag.manifestSha256,
      client: { name, zone, standing: standing as Standing, under18, email }, // its rule was checked
      from: { team: from, by: infoOf(bag, 'Contact-Name'), made: infoOf(bag, 'Bagging-Date') },
      period: record.period,
      rows,
      ladders,
      people,
      consents: record.consent.map(({ kind, to_team, given_at, withdrawn_at }) => ({
        kind,
        toTeam: to_team,
        givenAt: given_at,
        withdrawnAt: withdrawn_at,
      })),
      leftOut,
    },
  };
}

/** A stranger's words: bounded, and one line. */
function infoOf({ info }: ReadBag, name: string): string {
  return (info.get(name) ?? '').replace(/\p{Cc}/gu, ' ').slice(0, 200);
}
