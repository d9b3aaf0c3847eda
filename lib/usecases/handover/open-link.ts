import type { Readable } from 'node:stream';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import {
  type OpenedLink,
  openHandoverLink,
  type TriedLink,
  tryHandoverLink,
} from '#lib/db/handover-links.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import type { PackOptions } from '#lib/handover/pack-content.ts';
import { packedPeriod } from '#lib/handover/pack-report.ts';
import { reportOf } from '#lib/handover/report/report.ts';
import { reportHtml } from '#lib/handover/report/report-html.ts';
import { writePack } from '#lib/handover/write-pack.ts';
import type { OpenLink } from '#lib/schemas/handover-link.ts';
import { linkHashes } from './make-link.ts';
import { openPackContent } from './open-pack-content.ts';
import { spool } from './spool.ts';

const NOBODY = { userId: null, role: 'system' } as const;
const CLOSED =
  'This link opens nothing. It may have ended, been ended, or be closed after five codes that did not fit. Ask whoever sent it for a new one.';

export type OpenedPage = Omit<OpenedLink, 'options' | 'clientId'> & { html: string };

/** The report behind a link, for whoever has both the link and its code; the opening stands in the audit. */
export async function openLink(asked: OpenLink, now: Date): Promise<OpenedPage> {
  const tried = await tryLink(asked, now);
  const { options, clientId, ...about } = await opened(tried, { now, field: 'report' });
  return withTeamPg(
    tried.scope,
    async (tx) => {
      const content = await openPackContent(tx, { clientId, madeBy: about.by, options, now });
      const { report } = await packedPeriod(content, options);
      return { ...about, html: reportHtml(reportOf(report), options.paper) };
    },
    { isolation: 'repeatable read' },
  );
}

export type OpenedPack = { fileName: string; bytes: number; zip: Readable };

/** The pack behind a link, where the coach ticked it. */
export async function openLinkPack(asked: OpenLink, now: Date): Promise<OpenedPack> {
  const tried = await tryLink(asked, now);
  const { options, clientId, by } = await opened(tried, { now, field: 'pack' });
  return withTeamPg(
    tried.scope,
    async (tx) => {
      const content = await openPackContent(tx, { clientId, madeBy: by, options, now });
      const { bytes, read } = await spool((out) => writePack(content, options, out));
      const date = localDateOf(now, content.history.client.zone);
      return { fileName: `handover-${clientId.slice(0, 8)}-${date}.zip`, bytes, zip: read() };
    },
    { isolation: 'repeatable read' },
  );
}

async function tryLink({ token, code }: OpenLink, now: Date): Promise<TriedLink> {
  const { tokenHash, codeHash } = linkHashes({ token, code });
  const tried = await tryHandoverLink(tokenHash, codeHash, now);
  if (!tried) throw new AppError('not-found', CLOSED);
  if (tried.fits) return tried;
  await withTeamPg(tried.scope, (tx) =>
    insertAudit(tx, NOBODY, {
      action: 'link-code-wrong',
      clientId: tried.clientId,
      objectId: tried.linkId,
      fields: [],
    }),
  );
  if (tried.triesLeft === 0) throw new AppError('not-found', CLOSED);
  const left = tried.triesLeft === 1 ? '1 try is left' : `${tried.triesLeft} tries are left`;
  const message = `does not fit: ${left}, then the link is closed`;
  throw new AppError('invalid', `The code ${message}.`, { fields: { code: message } });
}

/** Counted and written down before anything is read, in a transaction of its own: two may open a link at once. */
function opened(
  { scope, linkId }: TriedLink,
  { now, field }: { now: Date; field: 'report' | 'pack' },
): Promise<Omit<OpenedLink, 'options'> & { options: PackOptions }> {
  return withTeamPg(scope, async (tx) => {
    const link = await openHandoverLink(tx, linkId, now);
    if (!link) throw new AppError('not-found', CLOSED);
    if (field === 'pack' && !link.withPack)
      throw new AppError('forbidden', 'This link shows the report only; no pack comes with it.');
    const { clientId } = link;
    await insertAudit(tx, NOBODY, { action: 'link-opened', clientId, objectId: linkId, fields: [field] });
    return { ...link, options: link.options as PackOptions };
  });
}
