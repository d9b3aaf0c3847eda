'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { postJson } from '../../_parts/post-json.ts';

type Props = { address: string; body?: object; word: string };

/** One act on a film that is asked for or came. */
export function FilmActs({ address, body = {}, word }: Props) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  const [busy, setBusy] = useState(false);
  async function act() {
    setBusy(true);
    const answer = await postJson(address, body);
    setBusy(false);
    setSaid(answer.ok ? '' : answer.message);
    if (answer.ok) router.refresh();
  }
  return (
    <>
      {' '}
      <button type="button" onClick={() => void act()} disabled={busy}>
        {word}
      </button>{' '}
      <span role="status">{said}</span>
    </>
  );
}
