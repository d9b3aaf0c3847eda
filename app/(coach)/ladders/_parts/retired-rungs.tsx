'use client';

import type { RungLine } from '#lib/views/ladders/ladder-page.ts';
import forms from '../../clients/_parts/forms.module.css';
import styles from './ladder.module.css';
import { useLadderEdit } from './use-ladder-edit.tsx';

type Props = { ladderId: string; base: string; rungs: RungLine[]; mayEdit: boolean };

/** Rungs that were retired: all that was logged on them stays, and they can be put back where they stood. */
export function RetiredRungs({ ladderId, base, rungs, mayEdit }: Props) {
  const { send, busy, told } = useLadderEdit({ ladderId, base }, () => undefined);
  if (rungs.length === 0) return null;
  return (
    <details className={styles.fold}>
      <summary>{rungs.length === 1 ? '1 retired rung' : `${rungs.length} retired rungs`}</summary>
      {told}
      <ul>
        {rungs.map((rung) => (
          <li key={rung.id}>
            <span>
              <b>{rung.name}</b>, {rung.mark}
              {rung.stands.length > 0 ? `; ${rung.stands.map((one) => one.words).join(', ')} still here` : ''}
            </span>
            {mayEdit ? (
              <button
                type="button"
                className={forms.plain}
                aria-label={`Put ${rung.name} back`}
                disabled={busy}
                onClick={() => send({ act: 'put-back-rung', rungId: rung.id })}
              >
                Put back
              </button>
            ) : null}
          </li>
        ))}
      </ul>
    </details>
  );
}
