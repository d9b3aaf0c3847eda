import type { Actor } from '#lib/auth/actor.ts';
import { env } from '#lib/config/env.ts';
import { findUserId } from '#lib/db/accounts.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { insertInvitation, listInvitations, renewInvitation, setWithdrawn } from '#lib/db/invitations.ts';
import type { MemberRole } from '#lib/db/members.ts';
import { insertMail } from '#lib/db/outbox-mail.ts';
import { AppError } from '#lib/errors.ts';
import { assertMember } from '../assert-member.ts';
import { hashToken, newToken } from '../make-entry-link.ts';

const LIFE_DAYS = 7;

export type MemberInvited = { invitationId: string; url: string; expiresAt: Date; mailedTo: string };

/** Asks somebody into the team: a link that works once, mailed and shown to the lead this once. */
export async function inviteMember(
  actor: Actor,
  input: { email: string; role: MemberRole },
  now: Date,
): Promise<MemberInvited> {
  const byId = assertMember(actor);
  await assertFree(input.email);
  return withTeamPg(actor.scope, async (tx) => {
    await assertNotAsked(tx, input.email);
    const link = newLink(now);
    const invitationId = await insertInvitation(tx, { ...input, ...link, byId, at: now });
    await mail(tx, actor, { ...input, ...link }, now);
    await insertAudit(tx, actor, { action: 'member-invited', objectId: invitationId, fields: ['role'] });
    return { invitationId, url: link.url, expiresAt: link.expiresAt, mailedTo: input.email };
  });
}

/** A fresh link for an invitation that waits; the older one stops working. */
export async function renewMemberInvitation(
  actor: Actor,
  invitationId: string,
  now: Date,
): Promise<MemberInvited> {
  return withTeamPg(actor.scope, async (tx) => {
    const link = newLink(now);
    const found = await renewInvitation(tx, invitationId, link);
    if (!found) throw gone();
    await mail(tx, actor, { ...found, ...link }, now);
    await insertAudit(tx, actor, { action: 'invitation-renewed', objectId: invitationId, fields: [] });
    return { invitationId, url: link.url, expiresAt: link.expiresAt, mailedTo: found.email };
  });
}

/** Withdraws an invitation, or takes that back; its link stops and works again with it. */
export async function withdrawInvitation(
  actor: Actor,
  input: { invitationId: string; withdrawn: boolean },
  now: Date,
): Promise<void> {
  const { invitationId, withdrawn } = input;
  await withTeamPg(actor.scope, async (tx) => {
    if (!(await setWithdrawn(tx, invitationId, withdrawn ? now : null))) throw gone();
    const action = withdrawn ? 'invitation-withdrawn' : 'invitation-restored';
    await insertAudit(tx, actor, { action, objectId: invitationId, fields: [] });
  });
}

type Link = { url: string; token: string; tokenHash: string; expiresAt: Date };

function newLink(now: Date): Link {
  const token = newToken();
  const expiresAt = new Date(now.getTime() + LIFE_DAYS * 24 * 3_600_000);
  return {
    token,
    tokenHash: hashToken(token),
    expiresAt,
    url: `${env().PLUMBLINE_ORIGIN}/join/team/${token}`,
  };
}

async function mail(
  tx: TeamPg,
  actor: Actor,
  asked: Link & { email: string; role: MemberRole },
  at: Date,
): Promise<void> {
  const as = { lead: 'as a lead', coach: 'as a coach', assistant: 'as an assistant' }[asked.role];
  await insertMail(tx, {
    to: asked.email,
    subject: `${actor.name} asks you into the team ${actor.teamName}`,
    text: `${actor.name} asks you into the team ${actor.teamName}, ${as}.\n\nOpen this within ${LIFE_DAYS} days, write your name and choose a password. It works once:\n${asked.url}\n\nIf you do not know ${actor.name}, leave it: nothing happens.\n`,
    clientId: null,
    dedupeKey: `member-invitation:${asked.tokenHash}`,
    at,
  });
}

async function assertFree(email: string): Promise<void> {
  if (!(await findUserId(email))) return;
  const message = 'Somebody signs in with this e-mail address already: use another one.';
  throw new AppError('conflict', message, { fields: { email: message } });
}

async function assertNotAsked(tx: TeamPg, email: string): Promise<void> {
  if (!(await listInvitations(tx)).some((one) => one.email === email)) return;
  const message = 'is asked in already: renew that invitation, or withdraw it first';
  throw new AppError('conflict', `email: ${message}`, { fields: { email: message } });
}

function gone(): AppError {
  return new AppError('not-found', 'This invitation does not wait any more, or is not of your team.');
}
