import { setImmediate } from 'node:timers/promises';
import type { Actor } from '#lib/auth/actor.ts';
import { compareStays, type StayChange } from '#lib/checks/replay/compare-stays.ts';
import { kindsReading } from '#lib/checks/replay/kinds-reading.ts';
import { type ReplayAsked, replayClient } from '#lib/checks/replay/replay-client.ts';
import type { Replay } from '#lib/checks/replay/replay-reasons.ts';
import { refusedNumbers } from '#lib/checks/thresholds/refused-numbers.ts';
import { isLimitId, type Limits, limitsWith } from '#lib/checks/thresholds.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { HISTORY_DAYS, loadHistories } from '#lib/db/histories.ts';
import { listReplayActs, listReplayClients, type ReplayClient } from '#lib/db/replay.ts';
import { listSettings, type SettingsOf } from '#lib/db/settings.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import { nightInstant } from '#lib/handover/night-instant.ts';
import type { SettingsToReplay } from '#lib/schemas/settings.ts';
import { REPLAY_NIGHTS, type ReplaySums } from '#lib/views/replay-words.ts';

/** Clients a request: so that others are answered between two of them. */
const CLIENTS_A_PART = 25;

type ReplayChange = StayChange & { clientId: string; name: string };
export type ReplayPart = {
  total: number;
  /** How many are done with this part; null: all. */
  next: number | null;
  clients: number;
  /** Reasons that came onto the board, and clients with one of them there, summed over mornings. */
  before: ReplaySums;
  after: ReplaySums;
  changes: ReplayChange[];
};

type Loaded = {
  clients: ReplayClient[];
  total: number;
  histories: Map<string, ClientHistory>;
  acts: Map<string, ReplayAsked['acts']>;
  settings: SettingsOf;
};

/**
 * The last 90 nights of some clients run again under the numbers in force and under others: which reasons would have
 * come, gone or moved. By what is known today, each night by the check-ins that had been sent by then. Changes nothing.
 */
export async function replaySettings(actor: Actor, input: SettingsToReplay, now: Date): Promise<ReplayPart> {
  const { clients, total, histories, acts, settings } = await load(actor, input, now);
  const done = input.skip + clients.length;
  const part: ReplayPart = {
    total,
    next: done < total ? done : null,
    clients: clients.length,
    before: { reasons: 0, clientMornings: 0 },
    after: { reasons: 0, clientMornings: 0 },
    changes: [],
  };
  assertTaken(input, settings);
  for (const client of clients) {
    const history = histories.get(client.id);
    if (!history) continue;
    await setImmediate();
    const runs = runsOf(client.id, input, settings);
    const ids = Object.keys(runs[0]).filter(isLimitId);
    const reading = kindsReading(ids.filter((id) => runs[0][id] !== runs[1][id]));
    const { nights, nightsDone } = nightsOf(history, client, now);
    const { before, after } = replayClient(
      { history, acts: acts.get(client.id) ?? [], nights, nightsDone, ...reading },
      runs,
    );
    add(part.before, before);
    add(part.after, after);
    for (const change of compareStays(before.stays, after.stays))
      part.changes.push({ ...change, clientId: client.id, name: client.name });
  }
  return part;
}

function load(actor: Actor, { clientId, skip }: SettingsToReplay, now: Date): Promise<Loaded> {
  const today = localDateOf(now, 'UTC');
  const from = addDays(today, -REPLAY_NIGHTS);
  return withTeamPg(actor.scope, async (tx) => {
    const { clients, total } = await listReplayClients(tx, { clientId, skip, limit: CLIENTS_A_PART, from });
    if (clientId !== null && clients.length === 0)
      throw new AppError('not-found', 'This client is not here.');
    const ids = clients.map(({ id }) => id);
    const settings = await listSettings(tx, ids);
    const histories = await loadHistories(tx, ids, {
      from: addDays(from, -HISTORY_DAYS),
      asOf: today,
      limits: settings.team.limits,
    });
    return { clients, total, settings, histories, acts: await listReplayActs(tx, ids, from) };
  });
}

/** The numbers in force for a client, and what they would be: a client's own stay over the team's. */
function runsOf(
  clientId: string,
  { clientId: scope, values }: SettingsToReplay,
  settings: SettingsOf,
): [Limits, Limits] {
  const changed: Partial<Limits> = values;
  const then =
    scope === null ? { ...changed, ...settings.ownOf(clientId) } : { ...settings.team.changed, ...changed };
  return [settings.of(clientId).limits, limitsWith(then)];
}

/** The schema looked at the numbers alone; over the team's they may be at odds. */
function assertTaken({ clientId, values }: SettingsToReplay, { team }: SettingsOf): void {
  const [refused] = refusedNumbers(values, clientId === null ? {} : team.changed);
  if (refused)
    throw new AppError('invalid', `${refused[0]}: ${refused[1]}`, {
      fields: { [`values.${refused[0]}`]: refused[1] },
    });
}

/** The evenings to run again: none before the client was here, and the last one whose night was due. */
function nightsOf(history: ClientHistory, { nightsDone }: ReplayClient, now: Date) {
  const { zone, joinedAt, invitedAt } = history.client;
  const here = joinedAt ?? invitedAt;
  const first = addDays(localDateOf(now, zone), -REPLAY_NIGHTS);
  const joined = here === null ? first : localDateOf(new Date(here), zone);
  const isNew = joined > first;
  const nights: { date: string; instant: string }[] = [];
  for (let date = isNew ? joined : first; ; date = addDays(date, 1)) {
    const instant = nightInstant(date, zone);
    if (Date.parse(instant) > now.getTime()) break;
    nights.push({ date, instant });
  }
  return { nights, nightsDone: isNew ? 0 : nightsDone };
}

function add(sums: ReplaySums, { stays, nightsOnBoard }: Replay): void {
  sums.reasons += stays.filter(({ onBoard }) => onBoard !== null).length;
  sums.clientMornings += nightsOnBoard.length;
}
