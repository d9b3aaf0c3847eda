'use client';
import { type ReactNode, useRef, useState } from 'react';
import type { ShownRow } from '#lib/views/board-draw.ts';
import { ActPanel, type Panel } from './act-panel.tsx';
import { useActOn, useActs } from './acts-store.ts';
import { usePrepares } from './prepares.tsx';
import styles from './row.module.css';
import { RowActs } from './row-acts.tsx';
import { RowKnown } from './row-known.tsx';
import { useAct } from './use-act.ts';
import { useStepDraft } from './use-step-draft.ts';

type Props = { row: ShownRow; canAct: boolean; children: ReactNode };

/** One row: what is read (children), what to do, and what was done with its undo. */
export function RowShell({ row: facts, canAct, children }: Props) {
  const { clientId, name } = facts;
  const acts = useActs();
  const prepares = usePrepares();
  const done = useActOn(clientId);
  const answered = acts.map((act) => act.questionId);
  const row = { ...facts, questions: facts.questions.filter(({ id }) => !answered.includes(id)) };
  const [panel, setPanel] = useState<Panel | null>(null);
  const { busy, problem, send, undo } = useAct();
  const { draft, problem: noDraft, load } = useStepDraft(clientId);
  const self = useRef<HTMLLIElement>(null);
  const folded = done?.folds ?? false;
  const line = done?.lines.get(clientId);

  async function act(body: Record<string, unknown>) {
    // Asked before: once it is done the field that was typed in is gone.
    const inside = self.current?.contains(document.activeElement);
    const sent = await send({ clientId, ...body }, name);
    if (!sent) return;
    setPanel(null);
    if (inside) focusOn(sent.folds ? nextRow(self.current) : self.current);
  }
  /** A step with a draft is shown before it is taken; one without is taken at once. */
  async function take() {
    if (panel === 'take') return close();
    const found = await load();
    if (found) setPanel('take');
    else if (found === null) await act({ act: 'take' });
  }
  async function takeBack() {
    if (done && (await undo(done.actId))) requestAnimationFrame(() => self.current?.focus());
  }
  function close() {
    const opener = self.current?.querySelector<HTMLElement>(`[data-act="${panel}"]`);
    setPanel(null);
    opener?.focus();
  }
  const open = !folded && row.known === null;
  return (
    <li
      ref={self}
      className={styles.row}
      data-row={clientId}
      data-name={name}
      data-tier={row.tier}
      data-folded={folded}
      data-known={row.known !== null || undefined}
      data-open={panel !== null || undefined}
      tabIndex={-1}
      aria-label={name}
    >
      {open ? children : <RowKnown row={row} line={folded ? line : undefined} />}
      <div className={styles.toDo}>
        {open && <p className={styles.step}>{row.step}</p>}
        {(canAct || prepares) && !folded && (
          <RowActs row={row} panel={panel} busy={busy} open={setPanel} take={take} act={act} />
        )}
        {done && !folded && <p className={styles.stays}>{line}</p>}
        {done && (
          <button type="button" data-undo={done.actId} onClick={takeBack} disabled={busy}>
            <u>U</u>ndo
          </button>
        )}
        <p role="status" className={folded ? 'heard-only' : styles.problem}>
          {problem ?? noDraft ?? (done ? <span className="heard-only">{`${name}: ${line}`}</span> : null)}
        </p>
      </div>
      {panel && open && (
        <ActPanel panel={panel} row={row} busy={busy} draft={draft} act={act} close={close} />
      )}
    </li>
  );
}

function nextRow(row: HTMLElement | null): HTMLElement | null {
  const rows = [...document.querySelectorAll<HTMLElement>('[data-row]')];
  const after = row ? rows.slice(rows.indexOf(row) + 1) : rows;
  return after.find((one) => one.dataset.folded === 'false') ?? row;
}

function focusOn(row: HTMLElement | null) {
  requestAnimationFrame(() => row?.focus());
}
