import type { RefObject } from 'react';
import styles from './board.module.css';

const LIST = [
  ['j, arrow down', 'next client'],
  ['k, arrow up', 'the client before'],
  ['Enter', 'open the client'],
  ['n', 'open the client after this one, here and on the page of a client'],
  ['t', 'take the proposed step'],
  ['a', 'answer the question'],
  ['p', 'put aside; with rows chosen, all of them'],
  ['d', 'done'],
  ['s', 'seen'],
  ['w', 'known: fold the row with a few words, or unfold it'],
  ['x', 'choose the row, or not'],
  ['u', 'undo the last act'],
  ['r', 'read the board again when it has changed'],
  ['/', 'find a client'],
  ['Esc', 'close what is open, choose nobody'],
  ['?', 'this list'],
] as const;

const ON_REPLIES = [
  ['j, arrow down', 'next question'],
  ['k, arrow up', 'the question before'],
  ['Enter', 'open the client'],
  ['a', 'answer'],
  ['s', 'seen'],
  ['u', 'undo the last act'],
  ['/', 'find an earlier answer'],
  ['Esc', 'close what is open'],
  ['?', 'this list'],
] as const;

type Props = {
  page: 'board' | 'replies';
  help: RefObject<HTMLDialogElement | null>;
  on: boolean;
  turn: (on: boolean) => void;
};

export function KeysHelp({ page, help, on, turn }: Props) {
  return (
    <dialog ref={help} aria-labelledby="keys-title" className={styles.keys}>
      <h2 id="keys-title">Keys on this page</h2>
      <dl>
        {(page === 'board' ? LIST : ON_REPLIES).map(([key, does]) => (
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
  );
}
