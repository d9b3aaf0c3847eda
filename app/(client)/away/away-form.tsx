'use client';
import Link from 'next/link';
import { useRef, useState } from 'react';
import { longDate } from '#lib/views/phone-dates.ts';
import { postJson } from '../_phone/post-json.ts';
import { Choice } from '../check-in/choice.tsx';

const KINDS = [
  { value: 'holiday', label: 'Holiday' },
  { value: 'illness', label: 'Ill' },
  { value: 'pause', label: 'Pause' },
] as const;
type Kind = (typeof KINDS)[number]['value'];

/** From, until when known. These days count as known days without training. */
export function AwayForm({ today, coach }: { today: string; coach: string }) {
  const id = useRef<string | null>(null);
  const [kind, setKind] = useState<Kind | null>(null);
  const [from, setFrom] = useState(today);
  const [to, setTo] = useState('');
  const [problem, setProblem] = useState('');
  const [isSent, setSent] = useState(false);
  const send = async () => {
    id.current ??= crypto.randomUUID();
    const failed = await postJson('/api/absences', { id: id.current, kind, from, to: to || null });
    setProblem(failed ?? '');
    setSent(failed === null);
  };
  const changed = (put: () => void) => {
    id.current = null; // other days are another absence
    put();
  };
  if (isSent) {
    return (
      <main>
        <h1 role="status">Kept. {coach} sees it.</h1>
        <p>
          From {longDate(from)}
          {to ? ` until ${longDate(to)}` : ', until you train again'}.
        </p>
        <Link className="word-act" href="/today">
          Back to Today
        </Link>
      </main>
    );
  }
  return (
    <>
      <main>
        <h1 style={{ marginTop: 4 }}>Away or ill</h1>
        <p className="quiet">Days without training that your coach knows about.</p>
        <Choice
          name="Why"
          options={KINDS}
          value={kind}
          columns={3}
          onChange={(value) => changed(() => setKind(value))}
        />
        <label className="field">
          First day
          <input
            className="text"
            type="date"
            value={from}
            onChange={(event) => changed(() => setFrom(event.target.value))}
          />
        </label>
        <label className="field">
          Last day, when you know it
          <input
            className="text"
            type="date"
            min={from}
            value={to}
            onChange={(event) => changed(() => setTo(event.target.value))}
          />
        </label>
        {problem ? (
          <p className="problem" role="alert">
            {problem}
          </p>
        ) : null}
      </main>
      <div className="phone-foot">
        <button
          type="button"
          className="act act-filled"
          disabled={kind === null || from === ''}
          onClick={() => void send()}
        >
          {kind === null ? 'Choose why first' : 'Send'}
        </button>
      </div>
    </>
  );
}
