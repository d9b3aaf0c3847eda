import { createHash, randomInt } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { env } from '#lib/config/env.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { isConsentWithdrawn } from '#lib/db/consents.ts';
import { findErasureAsk } from '#lib/db/erasures.ts';
import { insertHandoverLink } from '#lib/db/handover-links.ts';
import { findMemberName, insertHandoverPack } from '#lib/db/handover-packs.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import type { PackOptions } from '#lib/handover/pack-content.ts';
import { LINK_PERIODS, type MakeLink } from '#lib/schemas/handover-link.ts';
import { assertMember } from '../assert-member.ts';
import { newToken } from '../make-entry-link.ts';
import { openPackContent } from './open-pack-content.ts';

const DAY_MS = 86_400_000;

export type MadeLink = { linkId: string; url: string; code: string; expiresAt: Date };

/**
 * Makes a read-only page of a client's record for one named person. The code is told once, here; the database keeps
 * neither it nor the token. What was written after today never shows on it.
 */
export async function makeLink(
  actor: Actor,
  { clientId, ask }: { clientId: string; ask: MakeLink },
  now: Date,
): Promise<MadeLink> {
  const byId = assertMember(actor);
  return withTeamPg(
    actor.scope,
    async (tx) => {
      if (await isConsentWithdrawn(tx, clientId))
        throw new AppError('conflict', 'This client took their consent back: nothing is shown to others.');
      if (await findErasureAsk(tx, clientId))
        throw new AppError(
          'conflict',
          'The record of this client is about to be deleted: nothing is shown to others.',
        );
      const madeBy = (await findMemberName(tx, byId)) ?? 'a coach';
      const whole = linkOptions(ask, { from: null, to: null });
      // Refuses where there is no such client here.
      const { history } = await openPackContent(tx, { clientId, madeBy, options: whole, now });
      const to = localDateOf(now, history.client.zone);
      const back = LINK_PERIODS[ask.period];
      const options = linkOptions(ask, { from: back === null ? null : addDays(to, -back), to });
      const packId = await insertHandoverPack(tx, { clientId, byId, why: ask.why, options, sha256: null });
      const token = newToken();
      const code = String(randomInt(1_000_000)).padStart(6, '0');
      const expiresAt = new Date(now.getTime() + ask.days * DAY_MS);
      const linkId = await insertHandoverLink(tx, {
        packId,
        ...linkHashes({ token, code }),
        forWhom: ask.forWhom,
        withPack: ask.withPack,
        at: now,
        expiresAt,
      });
      await insertAudit(tx, actor, {
        action: 'link-made',
        clientId,
        objectId: linkId,
        fields: options.parts,
      });
      return { linkId, url: `${env().PLUMBLINE_ORIGIN}/handover/${token}`, code, expiresAt };
    },
    { isolation: 'repeatable read' },
  );
}

/** What is stored: the code is hashed with the token, so that whoever reads the table cannot try all million. */
export function linkHashes({ token, code }: { token: string; code: string }): {
  tokenHash: string;
  codeHash: string;
} {
  const hash = (text: string) => createHash('sha256').update(text).digest('hex');
  return { tokenHash: hash(token), codeHash: hash(`${token}:${code}`) };
}

function linkOptions(ask: MakeLink, period: PackOptions['period']): PackOptions {
  const { why, forWhom, summary } = ask;
  return {
    period,
    parts: ask.withPack ? ask.parts : [],
    paper: 'A4',
    words: { why, forWhom, summary: summary || null, next: null, manner: null },
  };
}
