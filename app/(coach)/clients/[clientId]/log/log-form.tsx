'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import type { CheckedLog, LookedAt } from '#lib/usecases/import/log/import-log.ts';
import type { LogMapping } from '#lib/usecases/import/log/shape-log.ts';
import { postJson } from '../../_parts/post-json.ts';
import { SheetForm } from '../../_parts/sheet-form.tsx';
import { FoundDays } from './found-days.tsx';
import { MatchLog } from './match-log.tsx';

/** From the text to what it holds to the days it brings. */
export function LogForm({ clientId, name }: { clientId: string; name: string }) {
  const router = useRouter();
  const [text, setText] = useState('');
  const [said, setSaid] = useState('');
  const [busy, setBusy] = useState(false);
  const [looked, setLooked] = useState<LookedAt | null>(null);
  const [mapping, setMapping] = useState<LogMapping | null>(null);
  const [found, setFound] = useState<CheckedLog | null>(null);

  async function post(body: object): Promise<unknown> {
    setBusy(true);
    const answer = await postJson(`/api/clients/${clientId}/log`, body);
    setBusy(false);
    setSaid(answer.ok ? '' : answer.message);
    return answer.ok ? answer.value : undefined;
  }
  function start(next: string) {
    setText(next);
    setLooked(null);
    setFound(null);
    setSaid('');
  }
  async function look(columns?: LogMapping['columns']) {
    setFound(null);
    const answer = (await post({ do: 'look', text, columns })) as LookedAt | undefined;
    if (answer) setLooked(answer);
  }
  async function check(next: LogMapping) {
    setMapping(next);
    setFound(((await post({ do: 'check', text, mapping: next })) as CheckedLog | undefined) ?? null);
  }
  async function take() {
    const done = (await post({ do: 'take', text, mapping })) as { days: number } | undefined;
    if (!done) return;
    start('');
    setSaid(
      `${done.days} ${done.days === 1 ? 'day has' : 'days have'} come in. It can be taken back below for a day.`,
    );
    router.refresh();
  }
  return (
    <>
      <SheetForm
        id="log"
        label="Or the log itself"
        placeholder={'Date;Exercise;Side;Sets;Reps;RPE\n2025-03-31;Wall line;;3;40 s;6'}
        press="Look at its columns"
        text={text}
        change={start}
        said={said}
        say={setSaid}
        busy={busy}
        isRead={looked !== null}
        read={() => void look()}
      />
      {looked && <MatchLog looked={looked} busy={busy} look={look} check={check} />}
      {found && <FoundDays found={found} name={name} busy={busy} take={take} />}
    </>
  );
}
