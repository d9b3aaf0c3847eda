import { createTransport, type Transporter } from 'nodemailer';
import { env } from '#lib/config/env.ts';
import type { Mail } from '#lib/db/outbox-mail.ts';

/** How long the mail server may take to greet and to answer; our own choice. */
const PATIENCE_MS = 20_000;
/** From here on a server says never, where it speaks of the recipient or the words: of a login or a sender it may change. */
const NEVER = 500;
const OF_THIS_MAIL = ['RCPT TO', 'DATA'];

/** `refused`: this mail will never be taken. */
export type MailOutcome = { how: 'sent' } | { how: 'refused'; why: string } | { how: 'failed'; why: string };

/** True when the settings name a mail server; the demo sends nothing, its mailbox page shows what it would have sent. */
export function canSendMail(): boolean {
  const { PLUMBLINE_MAIL_SERVER, PLUMBLINE_DEMO } = env();
  return PLUMBLINE_MAIL_SERVER !== undefined && PLUMBLINE_DEMO === 'off';
}

/** Hands one mail to the mail server. `key` is the same on every try. Never throws; a reason names no address. */
export async function sendMail(mail: Mail, key: string): Promise<MailOutcome> {
  const { PLUMBLINE_MAIL_FROM, PLUMBLINE_ORIGIN } = env();
  try {
    await transporter().sendMail({
      from: PLUMBLINE_MAIL_FROM,
      to: mail.to,
      subject: mail.subject,
      text: mail.text,
      // A repeat after a lost answer is the same mail: readers and servers may drop the second.
      messageId: `<${key}@${new URL(PLUMBLINE_ORIGIN).hostname}>`,
    });
    return { how: 'sent' };
  } catch (error) {
    const { code, isOfThisMail } = reasonOf(error);
    if (isOfThisMail) return { how: 'refused', why: `the mail server refused it (${code})` };
    return { how: 'failed', why: `the mail server did not take it (${code})` };
  }
}

/** What nodemailer says of an error: the answer of the server and the command that it answered. */
function reasonOf(error: unknown): { code: number | string; isOfThisMail: boolean } {
  if (!(error instanceof Error)) return { code: 'no answer', isOfThisMail: false };
  const { code = 'no answer', responseCode, command } = error as SmtpError;
  const isOfThisMail = (responseCode ?? 0) >= NEVER && OF_THIS_MAIL.includes(command ?? '');
  return { code: responseCode ?? code, isOfThisMail };
}
type SmtpError = Error & { code?: string; responseCode?: number; command?: string };

let opened: { server: string; transporter: Transporter } | undefined;
function transporter(): Transporter {
  const server = env().PLUMBLINE_MAIL_SERVER ?? '';
  if (opened?.server === server) return opened.transporter;
  const url = new URL(server);
  const options = {
    host: url.hostname,
    port: Number(url.port) || (url.protocol === 'smtps:' ? 465 : 587),
    secure: url.protocol === 'smtps:',
    // A password never travels in the clear: over smtp: the server has to offer TLS before it is told.
    requireTLS: url.protocol === 'smtp:' && url.username !== '',
    ...(url.username && {
      auth: { user: decodeURIComponent(url.username), pass: decodeURIComponent(url.password) },
    }),
    connectionTimeout: PATIENCE_MS,
    greetingTimeout: PATIENCE_MS,
    socketTimeout: PATIENCE_MS,
    disableFileAccess: true,
    disableUrlAccess: true,
  };
  opened = { server, transporter: createTransport(options) };
  return opened.transporter;
}
