'use client';
import { useEffect, useRef, useState } from 'react';
import { areKeysOn, isTyping, turnKeys } from '../_frame/single-keys.ts';
import { chooseNobody } from './acts-store.ts';
import styles from './board.module.css';
import { KeysHelp } from './keys-help.tsx';
import { keepMorning } from './morning-order.ts';

const ACTS: Record<string, string> = {
  t: 'take',
  a: 'answer',
  p: 'put-aside',
  d: 'done',
  s: 'seen',
  w: 'known',
};

/** The board by keyboard, and what else has rows. Off while typing; can be turned off for good on this device. */
export function BoardKeys({ page = 'board' }: { page?: 'board' | 'replies' }) {
  const help = useRef<HTMLDialogElement>(null);
  const [on, setOn] = useState(true);
  useEffect(() => {
    setOn(areKeysOn());
    select(selected() ?? rows()[0], false);
  }, []);
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === '?' && !isTyping(event)) help.current?.showModal();
      else if (on && !isTyping(event) && !help.current?.open && press(event)) event.preventDefault();
    };
    const onFocus = (event: FocusEvent) => {
      const row = (event.target as Element).closest<HTMLElement>('[data-row]');
      if (row) select(row, false);
    };
    document.addEventListener('keydown', onKey);
    document.addEventListener('focusin', onFocus);
    // What is opened from here has the same order beside it.
    if (page === 'board') document.addEventListener('click', keepOrder, true);
    return () => {
      document.removeEventListener('keydown', onKey);
      document.removeEventListener('focusin', onFocus);
      document.removeEventListener('click', keepOrder, true);
    };
  }, [on, page]);
  const turn = (next: boolean) => {
    turnKeys(next);
    setOn(next);
  };
  return (
    <>
      <button type="button" className={styles.keysButton} onClick={() => help.current?.showModal()}>
        Keys (?)
      </button>
      <KeysHelp page={page} help={help} on={on} turn={turn} />
    </>
  );
}

/** Whether the key did something. */
function press(event: KeyboardEvent): boolean {
  if (isDeaf()) return false;
  const row = selected();
  const { key } = event;
  if (key === 'j' || key === 'ArrowDown') return move(row, 1);
  if (key === 'k' || key === 'ArrowUp') return move(row, -1);
  if (key === '/') return focusFind();
  if (key === 'u') return undo(row);
  if (key === 'r') return click(document.querySelector('[data-read]'));
  if (key === 'x') return click(row?.querySelector('[data-tick]'));
  if (key === 'n') return openNext(row);
  if (key === 'Enter') return onRow(event) && click(row?.querySelector('a[data-open]'));
  if (key === 'Escape') return noneChosen();
  const bulk = document.querySelector<HTMLElement>('[data-bulk] input');
  if (key === 'p' && bulk) return focusOn(bulk);
  const act = ACTS[key];
  if (act === undefined) return false;
  const button = row?.querySelector<HTMLButtonElement>(`[data-act="${act}"]`);
  if (button?.disabled) deafUntil = Date.now() + DEAF_MS;
  return click(button);
}

/**
 * A key whose act has to wait for another one opens nothing: what is typed next was meant for that field, and must not
 * become acts letter by letter.
 */
let deafUntil = 0;
const DEAF_MS = 1_000;
function isDeaf(): boolean {
  if (Date.now() >= deafUntil) return false;
  deafUntil = Date.now() + DEAF_MS;
  return true;
}

/** Enter on a link or a button does what that one does. */
function onRow(event: KeyboardEvent): boolean {
  return (event.target as HTMLElement).closest('a, button, summary') === null;
}

function rows(): HTMLElement[] {
  return [...document.querySelectorAll<HTMLElement>('[data-row]')];
}

function selected(): HTMLElement | undefined {
  return document.querySelector<HTMLElement>('[data-row][data-selected]') ?? undefined;
}

/** Past the last row of a group that goes on, the rest of the group is read first. */
function move(row: HTMLElement | undefined, by: 1 | -1): boolean {
  const all = rows();
  const next = all[row ? all.indexOf(row) + by : 0];
  if (by === 1 && row && next?.closest('section') !== row.closest('section')) {
    const more = row.closest('section')?.querySelector('[data-more]');
    if (more) return click(more);
  }
  return select(next ?? row, true);
}

function openNext(row: HTMLElement | undefined): boolean {
  const all = rows();
  const next = all.slice(row ? all.indexOf(row) + 1 : 0).find((one) => one.dataset.folded === 'false');
  return click(next?.querySelector('a[data-open]'));
}

function select(row: HTMLElement | undefined, focus: boolean): boolean {
  if (!row) return false;
  selected()?.toggleAttribute('data-selected', false);
  row.toggleAttribute('data-selected', true);
  if (focus) {
    row.focus({ preventScroll: true });
    row.scrollIntoView({ block: 'nearest' });
  }
  return true;
}

/** The selected row's undo; else that of the newest act on the page. */
function undo(row: HTMLElement | undefined): boolean {
  return click(row?.querySelector('[data-undo]') ?? document.querySelector('[data-undo-last]'));
}

function noneChosen(): boolean {
  if (!document.querySelector('[data-bulk]')) return false;
  chooseNobody();
  return true;
}

function keepOrder(): void {
  const open = rows().filter((row) => row.dataset.folded === 'false');
  keepMorning(open.map((row) => ({ id: row.dataset.row ?? '', name: row.dataset.name ?? '' })));
}

function focusFind(): boolean {
  const field = document.querySelector<HTMLInputElement>('[data-find]');
  field?.select();
  return field !== null;
}

function focusOn(element: HTMLElement): boolean {
  element.focus();
  return true;
}

function click(element: Element | null | undefined): boolean {
  if (!(element instanceof HTMLElement)) return false;
  element.click();
  return true;
}
