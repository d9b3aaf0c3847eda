'use client';

import { useState } from 'react';
import { addParts, type ReplayShown, replayInWords } from '#lib/views/replay-words.ts';
import { postJson } from '../../clients/_parts/post-json.ts';
import styles from './checks.module.css';
import { ReplayTable } from './replay-table.tsx';
import type { Numbers } from './use-numbers.ts';

type Props = { clientId: string | null; numbers: Numbers };
type State = { of: string; shown: ReplayShown | null; problem: string; busy: boolean };

const NOTHING: State = { of: '', shown: null, problem: '', busy: false };

/** The last 90 nights under the typed numbers, some clients at a time, so that nobody else waits. */
export function ReplayPanel({ clientId, numbers }: Props) {
  const [state, setState] = useState<State>(NOTHING);
  const asked = JSON.stringify(numbers.values);
  const { shown, busy, problem } = state;
  const isOld = shown !== null && state.of !== asked;

  async function run() {
    let sum: ReplayShown | null = null;
    setState({ ...NOTHING, of: asked, busy: true });
    for (let skip: number | null = 0; skip !== null; ) {
      const answer = await postJson('/api/checks/replay', { clientId, values: numbers.values, skip });
      if (!answer.ok) {
        numbers.refuse(answer.fields);
        const [first] = Object.entries(answer.fields);
        const problem = first
          ? `${numbers.nameOf(first[0].replace(/^values\./, ''))} ${first[1]}.`
          : answer.message;
        setState({ of: asked, shown: sum, problem, busy: false });
        return;
      }
      const part = answer.value as ReplayShown;
      sum = sum ? addParts(sum, part) : part;
      skip = part.next;
      setState({ of: asked, shown: sum, problem: '', busy: skip !== null });
    }
  }

  return (
    <div>
      <h3>On the last 90 nights</h3>
      <p className={styles.hint}>
        Which reasons would have come, gone or moved, by name. Each night goes by the check-ins that had been
        sent by then, and by what coaches did with the reasons. Nothing is changed by trying.
      </p>
      <p className={styles.acts}>
        <button
          type="button"
          data-outlined
          disabled={busy || numbers.unreadable.length > 0}
          onClick={() => void run()}
        >
          Try these numbers
        </button>
        <span role="status">
          {busy && (shown ? `${shown.clients} of ${shown.total} clients` : 'reading the nights')}
          {isOld && 'The numbers were changed since: try again.'}
        </span>
      </p>
      {problem !== '' && <p role="alert">{problem}</p>}
      {shown && !busy && (
        <>
          <p className={styles.sum}>{replayInWords(shown)}</p>
          <ReplayTable lines={shown.lines} />
        </>
      )}
    </div>
  );
}
