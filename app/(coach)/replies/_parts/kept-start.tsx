'use client';
import { useId } from 'react';
import type { KeptChoice } from './use-reply-text.ts';

/** A kept reply as a start: it goes into the field, never out by itself. */
export function KeptStart({ kept, start }: { kept: KeptChoice[]; start: (reply: KeptChoice) => void }) {
  const id = useId();
  if (kept.length === 0) return null;
  return (
    <div>
      <label htmlFor={id}>Start from a kept reply</label>
      <select
        id={id}
        value=""
        onChange={(event) => {
          const reply = kept.find((one) => one.id === event.target.value);
          if (reply) start(reply);
        }}
      >
        <option value="">none chosen</option>
        {kept.map((reply) => (
          <option key={reply.id} value={reply.id}>
            {reply.name}
          </option>
        ))}
      </select>
    </div>
  );
}
