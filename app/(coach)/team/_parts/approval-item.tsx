'use client';
import Link from 'next/link';
import { type FormEvent, useRef, useState } from 'react';
import type { ApprovalShown } from '#lib/usecases/team/load-approvals.ts';
import { postJson, textIn } from '../../clients/_parts/post-json.ts';
import { Decide, type Open } from './decide.tsx';
import styles from './team.module.css';

type Props = { approval: ApprovalShown; mayApprove: boolean; ofClient: boolean };
type Done = { line: string; undoable: boolean };

/** One prepared act. Once decided it folds in place to one line with its undo. */
export function ApprovalItem({ approval, mayApprove, ofClient }: Props) {
  const [open, setOpen] = useState<Open>(null);
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState('');
  const [done, setDone] = useState<Done | null>(null);
  const self = useRef<HTMLLIElement>(null);

  async function post(address: string, body: unknown, undoable: boolean): Promise<void> {
    setBusy(true);
    const answer = await postJson(address, body);
    setBusy(false);
    setProblem(answer.ok ? '' : answer.message);
    if (!answer.ok) return;
    setOpen(null);
    const line = textIn(answer.value, 'line');
    setDone({ line, undoable: undoable && textIn(answer.value, 'state') !== 'overtaken' });
    self.current?.focus();
  }
  const decide = (body: object) => post(`/api/team/approvals/${approval.id}`, body, true);
  async function undo() {
    setBusy(true);
    const answer = await postJson(`/api/team/approvals/${approval.id}`, { decision: 'undo' });
    setBusy(false);
    setProblem(answer.ok ? '' : answer.message);
    if (answer.ok) setDone(null);
    self.current?.focus();
  }
  function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const words = String(new FormData(event.currentTarget).get('words') ?? '');
    if (open === 'send-back') void decide({ decision: 'send-back', words });
    else void decide({ decision: 'approve', body: changed(approval, words) });
  }
  const withdraw = () => post('/api/board/acts', { act: 'undo', actId: approval.id }, false);
  return (
    <li ref={self} className={styles.approval} data-approval={approval.id} tabIndex={-1}>
      {done ? (
        <p className={styles.folded}>
          <b>{approval.client}</b>
          <span role="status">{done.line}</span>
          {done.undoable && (
            <button type="button" data-act="undo" data-undo disabled={busy} onClick={() => void undo()}>
              <u>U</u>ndo
            </button>
          )}
        </p>
      ) : (
        <>
          <Shown approval={approval} ofClient={ofClient} />
          <Decide
            approval={approval}
            mayApprove={mayApprove}
            open={open}
            busy={busy}
            setOpen={setOpen}
            approve={() => void decide({ decision: 'approve' })}
            withdraw={() => void withdraw()}
            send={send}
          />
        </>
      )}
      {problem && <p role="alert">{problem}</p>}
    </li>
  );
}

/** The act with other words to the client. */
function changed({ act, body }: ApprovalShown, words: string): unknown {
  const own = typeof body === 'object' && body !== null ? body : {};
  if (act === 'answer' || act === 'film') return { ...own, text: words };
  const draft = 'draft' in own && typeof own.draft === 'object' ? own.draft : {};
  return { ...own, draft: { ...draft, words } };
}

function Shown({ approval, ofClient }: { approval: ApprovalShown; ofClient: boolean }) {
  const { title, client, clientId, about, does, words, preparedBy, mine, preparedAt } = approval;
  const Title = ofClient ? 'h4' : 'h3';
  return (
    <div>
      <Title>
        {title}
        {!ofClient && (
          <>
            {' for '}
            <Link href={`/clients/${clientId}`} data-open>
              {client}
            </Link>
          </>
        )}
      </Title>
      <p className={styles.by}>
        prepared by {mine ? 'you' : preparedBy}, {preparedAt}
      </p>
      {about && <q>{about}</q>}
      {does.length > 0 && (
        <ul>
          {does.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      {words && <blockquote dir="auto">{words}</blockquote>}
    </div>
  );
}
