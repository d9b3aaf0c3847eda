'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useRef, useState } from 'react';
import type { Limits } from '#lib/checks/thresholds.ts';
import { postJson } from '../../clients/_parts/post-json.ts';
import styles from './checks.module.css';

type Props = { clientId: string | null; version: number; before: Partial<Limits> };

/** What was just saved, and the way back: the numbers before it, as a new version. */
export function Saved({ clientId, version, before }: Props) {
  const router = useRouter();
  const line = useRef<HTMLParagraphElement>(null);
  const [problem, setProblem] = useState('');
  useEffect(() => line.current?.focus(), []);

  async function undo() {
    const url = clientId === null ? '/api/checks' : `/api/clients/${clientId}/checks`;
    const why = `version ${version} taken back`;
    const answer = await postJson(url, { values: before, why, baseVersion: version });
    if (!answer.ok) return setProblem(answer.message);
    router.replace(clientId === null ? '/checks' : `/checks?client=${clientId}`);
    router.refresh();
  }

  return (
    <p ref={line} tabIndex={-1} role="status" className={styles.own}>
      Saved as version {version}. The next night goes by it.{' '}
      <button type="button" onClick={() => void undo()}>
        Undo
      </button>{' '}
      {problem}
    </p>
  );
}
