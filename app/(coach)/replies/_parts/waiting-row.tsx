import Link from 'next/link';
import { Stills } from '#app/_ui/stills.tsx';
import type { ReplyContext, WaitingReply } from '#lib/views/replies/reply-types.ts';
import styles from './replies.module.css';
import { ReplyShell } from './reply-shell.tsx';
import type { KeptChoice } from './use-reply-text.ts';

type Props = { reply: WaitingReply; kept: KeptChoice[]; canAnswer: boolean; canSee: boolean };

/** What is read of a question is made on the server; the shell around it acts. */
export function WaitingRow({ reply, kept, canAnswer, canSee }: Props) {
  const { id, clientId, name, earlier } = reply;
  return (
    <ReplyShell reply={{ id, clientId, name, earlier }} kept={kept} canAnswer={canAnswer} canSee={canSee}>
      <div className={styles.client}>
        <h3>
          <Link href={`/clients/${clientId}`} data-open>
            {name}
          </Link>
        </h3>
        <p>
          <b>{reply.waited}</b>
        </p>
        <p title={reply.sinceExact}>asked {reply.since}</p>
        {reply.seen && <p>{reply.seen}</p>}
      </div>
      <div className={styles.asked}>
        {reply.danger && (
          <p className={styles.danger}>Holds words of a danger sign: read it first, do not wait for hours.</p>
        )}
        <blockquote>
          {reply.asked.map(({ at, text, danger }) => (danger ? <mark key={at}>{text}</mark> : text))}
        </blockquote>
        <Stills ids={reply.stills} place />
      </div>
      <Context clientId={clientId} context={reply.context} />
    </ReplyShell>
  );
}

function Context({ clientId, context }: { clientId: string; context: ReplyContext }) {
  return (
    <div className={styles.context}>
      {context.dangers.map(({ label, sentence, step }) => (
        <p key={label} className={styles.sign}>
          Danger sign not cleared. {sentence} <b>{step}.</b>
        </p>
      ))}
      {context.limits.map((limit) => (
        <p key={limit}>
          <b>Limit:</b> {limit}.
        </p>
      ))}
      {context.drills.map((drill) => (
        <p key={drill}>
          <b>In the plan:</b> {drill}.
        </p>
      ))}
      {context.reasons.map(({ id, kind, sentence }) => (
        <p key={id}>
          <Link href={`/clients/${clientId}/reasons/${id}`} prefetch={false}>
            {kind}
          </Link>
          : {sentence}
        </p>
      ))}
      <p>
        <b>Last check-in</b> {context.lastCheckIn} {context.words && <q>{context.words}</q>}
      </p>
    </div>
  );
}
