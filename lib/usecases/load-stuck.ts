import { env } from '#lib/config/env.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { NIGHTS_BACK } from '#lib/db/ledger.ts';
import { listGivenUp, listStuck } from '#lib/db/night-runs.ts';
import { listUnfinishedAtSix } from '#lib/db/operation.ts';
import { canSendMail } from '#lib/mail/send-mail.ts';
import { givenUpInWords, stuckInWords } from '#lib/views/stuck-outbox.ts';
import { unfinishedInWords } from '#lib/views/unfinished-nights.ts';

/** What waits longer than this in the outbox is stuck: the tick, every 15 minutes, hands on what nothing else did. */
const STUCK_AFTER_MS = 15 * 60_000;
const GIVEN_UP_SHOWN_MS = 7 * 24 * 3_600_000;

export type StuckView = {
  /** Nights that were not finished at 06:00 where the client lives, in words; empty: none. */
  unfinishedAtSix: string;
  /** What waits too long in the outbox, by kind. */
  stuck: { kind: string; words: string }[];
  /** What is not tried any more. */
  notLeft: string[];
  /** No mail server is set, so that mails only wait. */
  mailsWait: boolean;
};

/** What is stuck: nights past 06:00, and what should have left the outbox. */
export async function loadStuck(
  tx: TeamPg,
  { today, zone, now }: { today: string; zone: string; now: Date },
): Promise<StuckView> {
  const isDemo = env().PLUMBLINE_DEMO === 'on'; // its mails are read on a page and never leave
  const waiting = await listStuck(tx, new Date(now.getTime() - STUCK_AFTER_MS));
  const stuck = waiting.filter(({ kind }) => !(isDemo && (kind === 'mail' || kind === 'morning')));
  return {
    unfinishedAtSix: unfinishedInWords(await listUnfinishedAtSix(tx, now, NIGHTS_BACK), today),
    stuck: stuckInWords(stuck, { today, zone }),
    notLeft: givenUpInWords(await listGivenUp(tx, new Date(now.getTime() - GIVEN_UP_SHOWN_MS))),
    mailsWait: stuck.some(({ kind }) => kind === 'mail') && !canSendMail(),
  };
}
