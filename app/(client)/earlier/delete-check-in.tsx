'use client';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { postJson } from '../_phone/post-json.ts';

type Props = { id: string; name: string; coach: string };

/** Correct it, or delete it after one question. */
export function DeleteCheckIn({ id, name, coach }: Props) {
  const router = useRouter();
  const [stage, setStage] = useState<'rest' | 'asks' | 'sending'>('rest');
  const [problem, setProblem] = useState('');
  const remove = async () => {
    setStage('sending');
    const failed = await postJson(`/api/check-ins/${id}/delete`, {});
    setProblem(failed ?? '');
    if (failed) setStage('asks');
    else router.refresh();
  };
  if (stage === 'rest') {
    return (
      <div className="word-acts">
        <Link
          className="word-act"
          href={`/check-in?correct=${id}`}
          prefetch={false}
          aria-label={`Correct it: ${name}`}
        >
          Correct it
        </Link>
        <button
          type="button"
          className="word-act"
          aria-label={`Delete it: ${name}`}
          onClick={() => setStage('asks')}
        >
          Delete it
        </button>
      </div>
    );
  }
  return (
    <div role="alert">
      <p className="problem">
        {problem ||
          `Delete it? The day is worked out again without it. ${coach} can still read what it said.`}
      </p>
      <div className="cells cells-2">
        <button type="button" className="cell" disabled={stage === 'sending'} onClick={() => void remove()}>
          {stage === 'sending' ? 'Deleting' : 'Delete it'}
        </button>
        <button
          type="button"
          className="cell"
          disabled={stage === 'sending'}
          onClick={() => setStage('rest')}
        >
          Keep it
        </button>
      </div>
    </div>
  );
}
