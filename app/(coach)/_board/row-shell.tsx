'use client';
import { type ReactNode, useRef, useState } from 'react';
import { ActPanel, type Panel } from './act-panel.tsx';
import styles from './row.module.css';
import type { RowFacts } from './row-facts.ts';
import { type ActSent, useAct } from './use-act.ts';
import { useStepDraft } from './use-step-draft.ts';

type Props = RowFacts & { canAct: boolean; children: ReactNode };

/** One row: what is read (children), what to do, and what was done with its undo. */
export function RowShell({ children, canAct, ...facts }: Props) {
  const [answered, setAnswered] = useState<readonly string[]>([]);
  const row = { ...facts, questions: facts.questions.filter(({ id }) => !answered.includes(id)) };
  const [panel, setPanel] = useState<Panel | null>(null);
  const [done, setDone] = useState<ActSent | null>(null);
  const { busy, problem, send } = useAct();
  const { draft, problem: noDraft, load } = useStepDraft(row.clientId);
  const self = useRef<HTMLLIElement>(null);

  async function act(body: Record<string, unknown>) {
    const sent = await send({ clientId: row.clientId, ...body });
    if (!sent) return;
    const inside = self.current?.contains(document.activeElement);
    setPanel(null);
    setDone(sent);
    if (body.act === 'answer') setAnswered([...answered, String(body.questionId)]);
    if (inside) focusOn(sent.folds ? nextRow(self.current) : self.current);
  }
  /** A step with a draft is shown before it is taken; one without is taken at once. */
  async function take() {
    if (panel === 'take') return close();
    const found = await load();
    if (found) setPanel('take');
    else if (found === null) await act({ act: 'take' });
  }
  async function undo() {
    if (!done || !(await send({ act: 'undo', actId: done.actId }))) return;
    setDone(null);
    setAnswered([]);
    requestAnimationFrame(() => self.current?.focus());
  }
  function close() {
    const opener = self.current?.querySelector<HTMLElement>(`[data-act="${panel}"]`);
    setPanel(null);
    opener?.focus();
  }
  const undoButton = (
    <button type="button" data-undo onClick={undo} disabled={busy}>
      <u>U</u>ndo
    </button>
  );
  return (
    <li
      ref={self}
      className={styles.row}
      data-row={row.clientId}
      data-folded={done?.folds}
      data-open={panel !== null || undefined}
      tabIndex={-1}
      aria-label={row.name}
    >
      {done?.folds ? (
        <>
          <p className={styles.foldedName}>{row.name}</p>
          <p className={styles.foldedLine}>{done.line}</p>
        </>
      ) : (
        children
      )}
      <div className={styles.toDo}>
        {!done?.folds && <p className={styles.step}>{row.step}</p>}
        {canAct && !done?.folds && (
          <Acts row={row} panel={panel} busy={busy} open={setPanel} take={take} act={act} />
        )}
        {done && !done.folds && <p className={styles.stays}>{done.line}</p>}
        {done && undoButton}
        <p role="status" className={done?.folds ? 'heard-only' : styles.problem}>
          {problem ??
            noDraft ??
            (done ? <span className="heard-only">{`${row.name}: ${done.line}`}</span> : null)}
        </p>
      </div>
      {panel && !done?.folds && (
        <ActPanel panel={panel} row={row} busy={busy} draft={draft} act={act} close={close} />
      )}
    </li>
  );
}

type ActsProps = {
  row: RowFacts;
  panel: Panel | null;
  busy: boolean;
  open: (panel: Panel | null) => void;
  take: () => void;
  act: (body: Record<string, unknown>) => void;
};

function Acts({ row, panel, busy, open, take, act }: ActsProps) {
  const opener = (name: Panel, children: ReactNode) => (
    <button
      type="button"
      data-act={name}
      aria-expanded={panel === name}
      disabled={busy}
      onClick={() => open(panel === name ? null : name)}
    >
      {children}
    </button>
  );
  return (
    <div className={styles.acts}>
      <button type="button" data-act="take" aria-expanded={panel === 'take'} disabled={busy} onClick={take}>
        <u>T</u>ake
      </button>
      {row.questions.length > 0 &&
        opener(
          'answer',
          <>
            <u>A</u>nswer
          </>,
        )}
      {opener(
        'put-aside',
        <>
          <u>P</u>ut aside
        </>,
      )}
      {opener(
        'done',
        <>
          <u>D</u>one
        </>,
      )}
      <button type="button" data-act="seen" disabled={busy} onClick={() => act({ act: 'seen' })}>
        <u>S</u>een
      </button>
    </div>
  );
}

function nextRow(row: HTMLElement | null): HTMLElement | null {
  const rows = [...document.querySelectorAll<HTMLElement>('[data-row]')];
  const after = row ? rows.slice(rows.indexOf(row) + 1) : rows;
  return after.find((one) => one.dataset.folded === undefined) ?? row;
}

function focusOn(row: HTMLElement | null) {
  requestAnimationFrame(() => row?.focus());
}
