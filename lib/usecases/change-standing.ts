import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { listSettings } from '#lib/db/settings.ts';
import {
  dropPendingStandings,
  insertStandingChange,
  lockStandingClient,
  markStandingApplied,
  type StandingClient,
} from '#lib/db/standing-changes.ts';
import { addDays, daysBetween, localDateOf } from '#lib/domain/local-date.ts';
import { NEXT_STANDINGS } from '#lib/domain/standing-steps.ts';
import type { Standing } from '#lib/domain/vocabulary.ts';
import { AppError } from '#lib/errors.ts';
import { longDate } from '#lib/views/say-date.ts';
import { STANDING_LABELS } from '#lib/views/standing-labels.ts';
import { applyStanding } from './apply-standing.ts';
import { assertMember } from './assert-member.ts';

const FURTHEST_DAYS = 366;

type Change = {
  clientId: string;
  standing: Standing;
  /** The first day; today when left out. One to come is kept, and made when that day comes where the client lives. */
  from?: string | undefined;
  why?: string | undefined;
};
export type StandingChanged = { changeId: string; line: string };

/** Changes where a client stands with the coach: in training, paused, left and so on; with a trace and a way back. */
export async function changeStanding(actor: Actor, input: Change, now: Date): Promise<StandingChanged> {
  const byId = assertMember(actor);
  return withTeamPg(actor.scope, async (tx) => {
    const client = await lockStandingClient(tx, input.clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    const today = localDateOf(now, client.zone);
    const from = input.from ?? today;
    assertStep(client, input.standing);
    assertDay(from, today);
    await dropPendingStandings(tx, client.id, now);
    const { standing: after, why = '' } = input;
    const change = { clientId: client.id, byId, before: client.standing, after, from, why, at: now };
    const changeId = await insertStandingChange(tx, change);
    if (from <= today) await apply(tx, client, { id: changeId, after, from, memberId: byId }, now);
    await insertAudit(tx, actor, {
      action: 'standing-changed',
      clientId: client.id,
      objectId: changeId,
      fields: ['standing', 'from', ...(why === '' ? [] : ['why'])],
    });
    const { limits } = (await listSettings(tx, [client.id])).of(client.id);
    const newStartDays = limits['day.newStartDays'];
    return { changeId, line: lineOf(client, { after, from, today, newStartDays }) };
  });
}

async function apply(
  tx: TeamPg,
  client: StandingClient,
  change: { id: string; after: Standing; from: string; memberId: string },
  now: Date,
): Promise<void> {
  const behind = await applyStanding(tx, client, change, now);
  await markStandingApplied(tx, change.id, { behind, before: client.standing, at: now });
}

function assertStep({ name, standing }: StandingClient, to: Standing): void {
  if (NEXT_STANDINGS[standing].includes(to)) return;
  const next = NEXT_STANDINGS[standing].map((one) => `“${STANDING_LABELS[one]}”`).join(', ');
  refuse(
    'standing',
    standing === to
      ? `${name} stands there already`
      : `“${STANDING_LABELS[to]}” does not follow “${STANDING_LABELS[standing]}”: choose ${next}`,
  );
}

function assertDay(from: string, today: string): void {
  if (from < addDays(today, -FURTHEST_DAYS)) refuse('from', 'is more than a year ago');
  if (from > addDays(today, FURTHEST_DAYS)) refuse('from', 'is more than a year ahead');
}

function refuse(field: string, message: string): never {
  throw new AppError('invalid', `${field}: ${message}`, { fields: { [field]: message } });
}

type Made = { after: Standing; from: string; today: string; newStartDays: number };

/** What the change means now, in one line. */
function lineOf(client: StandingClient, to: Made): string {
  const label = STANDING_LABELS[to.after];
  if (to.from > to.today) return `From ${longDate(to.from)}: ${label}. Until then nothing changes.`;
  if (to.after !== 'back' || client.lastTrained === null) return `Now ${label}, from ${longDate(to.from)}.`;
  const away = daysBetween(client.lastTrained, to.from);
  const asNew = away > to.newStartDays;
  return `Back from ${longDate(to.from)}, ${away} days after the last training.${asNew ? ' That long away means starting as new: ask start tests and place every ladder afresh.' : ''}`;
}
