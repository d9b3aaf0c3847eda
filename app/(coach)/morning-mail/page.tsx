import type { Metadata } from 'next';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadMorningMail } from '#lib/usecases/load-morning-mail.ts';
import styles from '../replies/_parts/replies.module.css';
import { RepliesNav } from '../replies/_parts/replies-nav.tsx';
import { MorningForm } from './morning-form.tsx';

export const metadata: Metadata = { title: 'Your morning mail' };

const LEAVES = {
  'by-mail': null,
  demo: (
    <>
      The demo sends nothing: its mails stand in the <a href="/mailbox">mailbox</a>.
    </>
  ),
  nowhere:
    'No mail server is named in the settings of this installation (PLUMBLINE_MAIL_SERVER): nothing is sent.',
};

export default async function MorningMailPage() {
  const actor = await requireActor('choose-morning-mail');
  const { choice, mail, away, leaves } = await loadMorningMail(actor, now());
  return (
    <main id="main" tabIndex={-1} className={styles.page}>
      <div className={styles.head}>
        <h1>Your morning mail</h1>
        <p className={styles.counted}>
          The board in words, to {choice.email}: at most one a day. {LEAVES[leaves]}
        </p>
        <RepliesNav here="/morning-mail" />
      </div>
      <MorningForm
        mail={choice.mail}
        hour={choice.hour}
        zone={choice.zone}
        zones={['UTC', ...Intl.supportedValuesOf('timeZone')]}
      />
      <section className={styles.section} aria-labelledby="says">
        <h2 id="says">What it would say now</h2>
        <p className={styles.lead}>
          Mails are not encrypted on all of their way. So this one tells names and kinds of reason only: no
          pain score, no place that hurts, no words of a client. Those stand on the board, behind your
          sign-in.
        </p>
        {away && <p className={styles.lead}>You are covered today: your mail goes to who covers you.</p>}
        <h3>{mail.subject}</h3>
        <pre className={styles.mailText}>{mail.text}</pre>
      </section>
    </main>
  );
}
