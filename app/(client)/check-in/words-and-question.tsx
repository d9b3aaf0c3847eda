'use client';
import { useState } from 'react';
import type { Draft } from '../_phone/draft.ts';
import type { Change } from './use-draft.ts';

type Props = { draft: Draft; change: Change; coach: string };
const LONGEST = 4_000;

/** Both are folded away until wanted: most check-ins need no typing. */
export function WordsAndQuestion({ draft, change, coach }: Props) {
  const [hasWords, setHasWords] = useState(draft.words !== '');
  const [hasQuestion, setHasQuestion] = useState(draft.question !== '');
  return (
    <div style={{ marginTop: 12 }}>
      {hasWords ? (
        <label className="field">
          Words
          <textarea
            rows={3}
            maxLength={LONGEST}
            dir="auto"
            value={draft.words}
            onChange={(event) => change({ words: event.target.value })}
          />
        </label>
      ) : null}
      {hasQuestion ? (
        <label className="field">
          A question to {coach}
          <textarea
            rows={3}
            maxLength={LONGEST}
            dir="auto"
            value={draft.question}
            onChange={(event) => change({ question: event.target.value })}
          />
        </label>
      ) : null}
      <div className="word-acts">
        {hasWords ? null : (
          <button type="button" className="word-act" onClick={() => setHasWords(true)}>
            Add words
          </button>
        )}
        {hasQuestion ? null : (
          <button type="button" className="word-act" onClick={() => setHasQuestion(true)}>
            Ask {coach}
          </button>
        )}
      </div>
    </div>
  );
}
