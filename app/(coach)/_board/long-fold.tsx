'use client';
import { type ReactNode, useState } from 'react';
import type { FoldName } from '#lib/schemas/board-reads.ts';
import type { Waiting } from '#lib/views/board-types.ts';
import styles from './board.module.css';
import { FoldList } from './fold-list.tsx';

type Props = { summary: ReactNode; name: FoldName; query: string };

/** A fold whose names are read when it is opened. */
export function LongFold({ summary, name, query }: Props) {
  const [list, setList] = useState<Waiting[]>([]);
  const [problem, setProblem] = useState('');
  async function read(open: boolean) {
    if (!open || list.length > 0) return;
    try {
      const answer = await fetch(`/api/board/folds?${query}${query && '&'}fold=${name}`);
      if (!answer.ok) throw new Error(`${answer.status}`);
      setList((await answer.json()).list);
      setProblem('');
    } catch {
      setProblem('No connection: close and open this again when it is back.');
    }
  }
  return (
    <details className={styles.fold} onToggle={(event) => void read(event.currentTarget.open)}>
      <summary>{summary}</summary>
      <FoldList list={list} starting={name === 'gettingToKnow'} />
      <p role="status">{problem}</p>
    </details>
  );
}
