'use client';
import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import { postFile } from '../../_phone/post-file.ts';
import { postJson } from '../../_phone/post-json.ts';
import { type ChosenStill, StillChoice } from './still-choice.tsx';

const MOST_BYTES = 10 * 1024 * 1024;

/** A question without a check-in. What is typed and chosen stays in the form until it has arrived. */
export function AskForm({ coach }: { coach: string }) {
  const router = useRouter();
  const id = useRef<string | null>(null);
  const [text, setText] = useState('');
  const [stills, setStills] = useState<ChosenStill[]>([]);
  const [state, setState] = useState<{ busy: boolean; said: string }>({ busy: false, said: '' });
  const send = async () => {
    if (state.busy || text.trim() === '') return;
    setState({ busy: true, said: stills.length > 0 ? 'Sending. Pictures take a moment.' : '' });
    id.current ??= crypto.randomUUID();
    const problem = await postJson('/api/questions', { id: id.current, text });
    if (problem) return setState({ busy: false, said: problem });
    const refused = await sendStills(id.current, stills);
    router.refresh();
    setStills(refused.map((one) => one.still));
    if (refused.length > 0) return setState({ busy: false, said: refusedInWords(coach, refused) });
    id.current = null;
    setText('');
    setState({ busy: false, said: `Sent to ${coach}.` });
  };
  const change = (changed: string) => {
    id.current = null; // another text is another question
    setText(changed);
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <label className="field">
        Ask {coach}
        <textarea
          rows={3}
          maxLength={4_000}
          dir="auto"
          value={text}
          onChange={(event) => change(event.target.value)}
        />
      </label>
      <StillChoice stills={stills} change={setStills} />
      <p role="status" className="quiet" style={{ margin: '8px 0' }}>
        {state.said}
      </p>
      <button type="submit" className="act" disabled={state.busy || text.trim() === ''}>
        Send the question
      </button>
    </form>
  );
}

type Refused = { still: ChosenStill; why: string };

/** One after the other; what did not arrive, with the reason. */
async function sendStills(questionId: string, stills: ChosenStill[]): Promise<Refused[]> {
  const refused: Refused[] = [];
  for (const still of stills) {
    const why =
      still.file.size > MOST_BYTES
        ? 'This picture is longer than 10 MB. Send a smaller one.'
        : await postFile(`/api/questions/${questionId}/stills/${still.id}`, still.file);
    if (why) refused.push({ still, why });
  }
  return refused;
}

function refusedInWords(coach: string, refused: Refused[]): string {
  const each = refused.map(({ still, why }) => `${still.file.name}: ${why}`).join(' ');
  return `The question is sent to ${coach}, not everything with it. ${each} Take it away, or send again: nothing is sent twice.`;
}
