import { createHash } from 'node:crypto';
import type { TeamPg } from '#lib/db/client.ts';
import { rebuildRollups } from '#lib/db/rollups.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import type { DemoClient } from '../life.ts';
import { insertRows } from './insert.ts';
import { idOf, type Place } from './place.ts';

type Sent = {
  clientId: string;
  planVersion: number | null;
  checkIn: HistoryCheckIn;
  corrects: string | null;
  replacedAt: string | null;
};

/** Check-ins with sets, pain and danger signs, those that were corrected later too, and the day rollups. */
export async function writeCheckIns(tx: TeamPg, clients: DemoClient[], place: Place): Promise<void> {
  const sent = clients.flatMap(sentBy);
  // Corrections point at their originals, so the originals go in first.
  for (const part of [sent.filter((each) => !each.corrects), sent.filter((each) => each.corrects)]) {
    await writeHeads(tx, part);
  }
  await writeSets(tx, sent, place);
  await writePain(tx, sent);
  for (const { history } of clients) {
    await rebuildRollups(
      tx,
      history.client.id,
      history.checkIns.map((checkIn) => checkIn.date),
    );
  }
}

function sentBy({ history, extra }: DemoClient): Sent[] {
  const clientId = history.client.id;
  const planOn = (date: string) => history.plans.findLast((plan) => plan.from <= date)?.version ?? null;
  const firsts = extra.corrected.map(({ first, at }) => ({
    clientId,
    planVersion: planOn(first.date),
    checkIn: first,
    corrects: null,
    replacedAt: at,
  }));
  const effective = history.checkIns.map((checkIn) => {
    const correction = extra.corrected.find((each) => each.correctedBy === checkIn.id);
    return {
      clientId,
      planVersion: planOn(checkIn.date),
      checkIn: correction ? { ...checkIn, sentAt: correction.at } : checkIn,
      corrects: correction?.first.id ?? null,
      replacedAt: null,
    };
  });
  return [...firsts, ...effective];
}

async function writeHeads(tx: TeamPg, sent: Sent[]): Promise<void> {
  await insertRows(
    tx,
    'check_in',
    {
      id: 'uuid',
      client_id: 'uuid',
      corrects_id: 'uuid',
      body_hash: 'text',
      date: 'date',
      zone: 'text',
      sent_at: 'timestamptz',
      received_at: 'timestamptz',
      kind: 'text',
      session: 'text',
      plan_version: 'int',
      effort: 'int',
      minutes: 'int',
      ground: 'text',
      sleep_hours: 'float8',
      nothing_hurts: 'boolean',
      words: 'text',
      replaced_at: 'timestamptz',
    },
    sent.map(({ clientId, planVersion, checkIn, corrects, replacedAt }) => ({
      id: checkIn.id,
      client_id: clientId,
      corrects_id: corrects,
      body_hash: createHash('sha256').update(JSON.stringify(checkIn)).digest('hex'),
      date: checkIn.date,
      zone: checkIn.zone,
      sent_at: checkIn.sentAt,
      received_at: checkIn.sentAt,
      kind: checkIn.kind,
      session: checkIn.session,
      plan_version: planVersion,
      effort: checkIn.effort,
      minutes: checkIn.minutes,
      ground: checkIn.ground,
      sleep_hours: checkIn.sleepHours,
      nothing_hurts: checkIn.nothingHurts,
      words: checkIn.words,
      replaced_at: replacedAt,
    })),
  );
}

async function writeSets(tx: TeamPg, sent: Sent[], place: Place): Promise<void> {
  await insertRows(
    tx,
    'check_in_set',
    {
      check_in_id: 'uuid',
      client_id: 'uuid',
      rung_id: 'uuid',
      side: 'text',
      idx: 'int',
      planned: 'float8',
      value: 'float8',
      tried: 'int',
      how: 'text',
      clean: 'boolean',
      faults: 'text[]',
      support: 'text',
      added_kg: 'float8',
    },
    sent.flatMap(({ clientId, checkIn }) =>
      checkIn.sets.map((set) => ({
        check_in_id: checkIn.id,
        client_id: clientId,
        rung_id: idOf(place.rungIds, set.rungId),
        side: set.side,
        idx: set.index,
        planned: set.planned,
        value: set.value,
        tried: set.tried,
        how: set.how,
        clean: set.clean,
        faults: set.faults,
        support: set.support,
        added_kg: set.addedKg,
      })),
    ),
  );
}

async function writePain(tx: TeamPg, sent: Sent[]): Promise<void> {
  const of = ({ clientId, checkIn }: Sent) => ({ check_in_id: checkIn.id, client_id: clientId });
  await insertRows(
    tx,
    'pain_score',
    {
      check_in_id: 'uuid',
      client_id: 'uuid',
      region: 'text',
      side: 'text',
      moment: 'text',
      value: 'int',
      kind: 'text',
      usual: 'boolean',
    },
    sent.flatMap((each) => each.checkIn.pain.map((score) => ({ ...of(each), ...score }))),
  );
  await insertRows(
    tx,
    'danger_sign_told',
    {
      check_in_id: 'uuid',
      client_id: 'uuid',
      sign: 'text',
      gone_within_minute: 'boolean',
      region: 'text',
      side: 'text',
    },
    sent.flatMap((each) =>
      each.checkIn.dangerSigns.map((told) => ({
        ...of(each),
        sign: told.sign,
        gone_within_minute: told.goneWithinMinute,
        region: told.region,
        side: told.side,
      })),
    ),
  );
}
