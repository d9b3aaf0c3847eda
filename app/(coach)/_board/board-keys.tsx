'use client';
import { useEffect, useRef, useState } from 'react';
import styles from './board.module.css';

const KEPT = 'plumbline-keys';
const ACTS: Record<string, string> = { t: 'take', a: 'answer', p: 'put-aside', d: 'done', s: 'seen' };
const LIST = [
  ['j, arrow down', 'next client'],
  ['k, arrow up', 'the client before'],
  ['Enter', 'open the client'],
  ['t', 'take the proposed step'],
  ['a', 'answer the question'],
  ['p', 'put aside'],
  ['d', 'done'],
  ['s', 'seen'],
  ['u', 'undo the last act'],
  ['/', 'find a client'],
  ['Esc', 'close what is open'],
  ['?', 'this list'],
] as const;

/** The board by keyboard. Off while typing; can be turned off for good on this device. */
export function BoardKeys() {
  const help = useRef<HTMLDialogElement>(null);
  const [on, setOn] = useState(true);
  useEffect(() => {
    setOn(localStorage.getItem(KEPT) !== 'off');
    select(rows()[0], false);
  }, []);
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === '?' && !isTyping(event)) help.current?.showModal();
      else if (on && !isTyping(event) && !help.current?.open) press(event);
    };
    const onFocus = (event: FocusEvent) => {
      const row = (event.target as Element).closest<HTMLElement>('[data-row]');
      if (row) select(row, false);
    };
    document.addEventListener('keydown', onKey);
    document.addEventListener('focusin', onFocus);
    return () => {
      document.removeEventListener('keydown', onKey);
      document.removeEventListener('focusin', onFocus);
    };
  }, [on]);
  const turn = (next: boolean) => {
    localStorage.setItem(KEPT, next ? 'on' : 'off');
    setOn(next);
  };
  return (
    <>
      <button type="button" className={styles.keysButton} onClick={() => help.current?.showModal()}>
        Keys (?)
      </button>
      <dialog ref={help} aria-labelledby="keys-title" className={styles.keys}>
        <h2 id="keys-title">Keys on this page</h2>
        <dl>
          {LIST.map(([key, does]) => (
            <div key={key}>
              <dt>{key}</dt>
              <dd>{does}</dd>
            </div>
          ))}
        </dl>
        <label className={styles.keysOn}>
          <input type="checkbox" checked={on} onChange={(event) => turn(event.target.checked)} /> Single keys
          act (never while you type)
        </label>
        <button type="button" data-filled onClick={() => help.current?.close()}>
          Close
        </button>
      </dialog>
    </>
  );
}

function press(event: KeyboardEvent) {
  const row = document.querySelector<HTMLElement>('[data-row][data-selected]');
  const act = ACTS[event.key];
  const handled =
    event.key === 'j' || event.key === 'ArrowDown'
      ? move(row, 1)
      : event.key === 'k' || event.key === 'ArrowUp'
        ? move(row, -1)
        : event.key === '/'
          ? focusFind()
          : event.key === 'u'
            ? click(lastUndo(row))
            : event.key === 'Enter' && onRow(event)
              ? click(row?.querySelector('a[data-open]'))
              : act !== undefined && click(row?.querySelector(`[data-act="${act}"]`));
  if (handled) event.preventDefault();
}

function isTyping(event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return true;
  const target = event.target as HTMLElement;
  return target.closest('input, select, textarea, [contenteditable]') !== null;
}

/** Enter on a link or a button does what that one does. */
function onRow(event: KeyboardEvent): boolean {
  return (event.target as HTMLElement).closest('a, button, summary') === null;
}

function rows(): HTMLElement[] {
  return [...document.querySelectorAll<HTMLElement>('[data-row]')];
}

function move(row: HTMLElement | null, by: number): boolean {
  const all = rows();
  const at = row ? all.indexOf(row) : -1;
  const next = all[Math.max(0, Math.min(all.length - 1, at + by))];
  return select(row && document.activeElement === document.body && by === 0 ? row : next, true);
}

function select(row: HTMLElement | undefined, focus: boolean): boolean {
  if (!row) return false;
  for (const one of rows()) one.toggleAttribute('data-selected', one === row);
  if (focus) {
    row.focus({ preventScroll: true });
    row.scrollIntoView({ block: 'nearest' });
  }
  return true;
}

/** The selected row's undo; else the newest one on the page. */
function lastUndo(row: HTMLElement | null): Element | null {
  return row?.querySelector('[data-undo]') ?? [...document.querySelectorAll('[data-undo]')].at(-1) ?? null;
}

function focusFind(): boolean {
  const field = document.querySelector<HTMLInputElement>('[data-find]');
  field?.select();
  return field !== null;
}

function click(element: Element | null | undefined): boolean {
  if (!(element instanceof HTMLElement)) return false;
  element.click();
  return true;
}
