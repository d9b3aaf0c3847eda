import type { ReactNode } from 'react';
import type { Panel } from './act-panel.tsx';
import { usePrepares } from './prepares.tsx';
import styles from './row.module.css';
import type { RowFacts } from './row-facts.ts';

type Props = {
  row: RowFacts;
  panel: Panel | null;
  busy: boolean;
  open: (panel: Panel | null) => void;
  take: () => void;
  act: (body: Record<string, unknown>) => void;
};

/** The acts as words, each with its key underlined; only those that can be done to this row. */
export function RowActs({ row, panel, busy, open, take, act }: Props) {
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
  const prepares = usePrepares();
  if (prepares && row.known !== null) return null;
  if (row.known !== null) {
    return (
      <div className={styles.acts}>
        <button type="button" data-act="known" disabled={busy} onClick={() => act({ act: 'not-known' })}>
          Kno<u>w</u>n no more
        </button>
      </div>
    );
  }
  return (
    <div className={styles.acts}>
      {!row.onlyQuestion && (
        <button type="button" data-act="take" aria-expanded={panel === 'take'} disabled={busy} onClick={take}>
          <u>T</u>ake
        </button>
      )}
      {row.questions.length > 0 &&
        opener(
          'answer',
          <>
            <u>A</u>nswer
          </>,
        )}
      {!prepares &&
        !row.onlyQuestion &&
        opener(
          'put-aside',
          <>
            <u>P</u>ut aside
          </>,
        )}
      {!prepares &&
        !row.onlyQuestion &&
        opener(
          'done',
          <>
            <u>D</u>one
          </>,
        )}
      {!prepares && (
        <button type="button" data-act="seen" disabled={busy} onClick={() => act({ act: 'seen' })}>
          <u>S</u>een
        </button>
      )}
      {!prepares &&
        row.mayBeKnown &&
        opener(
          'known',
          <>
            Kno<u>w</u>n
          </>,
        )}
    </div>
  );
}
