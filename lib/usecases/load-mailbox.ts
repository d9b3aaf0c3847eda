import { z } from 'zod';
import { env } from '#lib/config/env.ts';
import { type TeamScope, withTeam } from '#lib/db/client.ts';
import { listMails } from '#lib/db/outbox-mail.ts';

const SHOWN = 50;
const storedMail = z.object({ to: z.string(), subject: z.string(), text: z.string() });

export type ShownMail = z.output<typeof storedMail> & { readonly id: string; readonly at: Date };

/** The mails that the demo would have sent, newest first; undefined outside the demo. */
export async function loadMailbox(scope: TeamScope): Promise<ShownMail[] | undefined> {
  if (env().PLUMBLINE_DEMO !== 'on') return undefined;
  const mails = await withTeam(scope, (tx) => listMails(tx, SHOWN));
  return mails.map(({ id, at, body }) => ({ id, at, ...storedMail.parse(body) }));
}
