import type { FoldName } from '#lib/schemas/board-reads.ts';
import type { Waiting } from '#lib/views/board-types.ts';
import styles from './board.module.css';
import { FoldList } from './fold-list.tsx';
import { LongFold } from './long-fold.tsx';

type Props = {
  word: string;
  /** The whole summary, where it says more than word and count. */
  says?: string;
  name: FoldName;
  list: Waiting[];
  query: string;
};
/** A longer list is read when it is opened: hundreds of names on every board would help nobody. */
const WITH_THE_PAGE = 12;

export function Fold({ word, says, name, list, query }: Props) {
  if (list.length === 0) {
    return (
      <p className={styles.fold}>
        {word}: <b>0</b>
      </p>
    );
  }
  const summary = says ?? (
    <>
      {word}: <b>{list.length}</b>
    </>
  );
  if (list.length > WITH_THE_PAGE || name === 'nothingNew')
    return <LongFold summary={summary} name={name} query={query} />;
  return (
    <details className={styles.fold}>
      <summary>{summary}</summary>
      <FoldList list={list} starting={name === 'gettingToKnow'} />
    </details>
  );
}
