'use client';
import { useEffect, useRef, useState } from 'react';
import type { Tier } from '#lib/domain/vocabulary.ts';
import type { ShownRow } from '#lib/views/board-draw.ts';
import styles from './board.module.css';
import { BoardRow } from './board-row.tsx';

type Props = {
  tier: Tier;
  title: string;
  /** Rows that came with the page. */
  rows: ShownRow[];
  more: number;
  query: string;
  canAct: boolean;
};

/** The rows of a group: the first ones with the page, the rest as it is asked for, by a press or by moving on. */
export function GroupRows({ tier, title, rows, more, query, canAct }: Props) {
  const [added, setAdded] = useState<ShownRow[]>([]);
  const [left, setLeft] = useState(more);
  const [state, setState] = useState<'' | 'reading' | 'lost'>('');
  // Once they stand on the page: the first of those that came is where one goes on.
  const goOn = useRef<string | undefined>(undefined);
  // biome-ignore lint/correctness/useExhaustiveDependencies: rows that came are what it waits for
  useEffect(() => {
    focusOn(goOn.current);
    goOn.current = undefined;
  }, [added]);
  async function read() {
    if (state === 'reading') return;
    setState('reading');
    try {
      const answer = await fetch(`/api/board/rows?${query}${query && '&'}of=${tier}${after(tier)}`);
      if (!answer.ok) throw new Error(`${answer.status}`);
      const said: { rows: ShownRow[]; more: number } = await answer.json();
      const here = new Set([...rows, ...added].map((row) => row.clientId));
      const fresh = said.rows.filter((row) => !here.has(row.clientId));
      goOn.current = fresh[0]?.clientId;
      setAdded([...added, ...fresh]);
      setLeft(said.more);
      setState('');
    } catch {
      setState('lost');
    }
  }
  return (
    <>
      <ol className={styles.rows}>
        {[...rows, ...added].map((row) => (
          <BoardRow key={row.clientId} row={row} canAct={canAct} />
        ))}
      </ol>
      {left > 0 && (
        <p className={styles.more}>
          <button type="button" data-more={tier} onClick={read}>
            {left} more under {title.toLowerCase()}
          </button>{' '}
          <span role="status">{state === 'lost' && 'No connection: press again when it is back.'}</span>
        </p>
      )}
    </>
  );
}

/** The last row of the group that was not acted on: one that left the board says nothing of a place. */
function after(tier: Tier): string {
  const standing = document.querySelectorAll<HTMLElement>(
    `[data-row][data-tier="${tier}"][data-folded="false"]`,
  );
  const last = [...standing].at(-1)?.dataset.row;
  return last ? `&after=${last}` : '';
}

function focusOn(clientId: string | undefined): void {
  if (clientId) document.querySelector<HTMLElement>(`[data-row="${clientId}"]`)?.focus();
}
