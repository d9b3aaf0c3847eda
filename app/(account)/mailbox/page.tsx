import { notFound } from 'next/navigation';
import { requireActor } from '#lib/auth/require-actor.ts';
import { loadMailbox, type ShownMail } from '#lib/usecases/load-mailbox.ts';
import styles from '../account.module.css';

export const metadata = { title: 'Mailbox of the demo' };

export default async function MailboxPage() {
  const actor = await requireActor('see-mailbox');
  const mails = await loadMailbox(actor.scope);
  if (!mails) notFound();
  return (
    <main className={styles.page}>
      <h1>Mailbox: the demo sends nothing, it shows its mails here.</h1>
      {mails.length === 0 && <p>No mail yet. Inviting a client who has an e-mail address makes one.</p>}
      {mails.map((mail) => (
        <Mail key={mail.id} mail={mail} />
      ))}
    </main>
  );
}

function Mail({ mail }: { mail: ShownMail }) {
  const at = mail.at.toISOString();
  return (
    <article className={styles.mail}>
      <h3>{mail.subject}</h3>
      <p>
        to <bdi>{mail.to}</bdi>, <time dateTime={at}>{at.slice(0, 16).replace('T', ' ')} UTC</time>
      </p>
      <pre dir="auto">
        {mail.text.split(/(https?:\/\/\S+)/).map((part) =>
          part.startsWith('http') ? (
            <a key={part} href={part}>
              {part}
            </a>
          ) : (
            part
          ),
        )}
      </pre>
    </article>
  );
}
