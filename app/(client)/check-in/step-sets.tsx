'use client';
import { useState } from 'react';
import type { PhoneDrill, PhoneSession } from '#lib/views/phone-session.ts';
import { type Draft, plannedSets, type SetDraft, setKey } from '../_phone/draft.ts';
import { Tick } from '../_phone/icons.tsx';
import { changeSwap, trainedDrill } from '../_phone/swaps.ts';
import { DrillSets, type OpenSet } from './drill-sets.tsx';
import { LimitedDrill } from './limited-drill.tsx';
import type { Change } from './use-draft.ts';

type Props = {
  draft: Draft;
  /** As it is trained, and as it is planned. */
  session: PhoneSession | null;
  planned: PhoneSession | null;
  sessions: PhoneSession[];
  planVersion: number | null;
  change: Change;
};
/** Every planned set is there; one tap confirms the rest, a tap on a number changes only what differed. */
export function StepSets({ draft, session, planned, sessions, planVersion, change }: Props) {
  const [open, setOpen] = useState<OpenSet>(null);
  const hasSets = Object.values(draft.sets).flat().length > 0;
  const left = Object.values(draft.sets)
    .flat()
    .filter((set) => set.how === 'open').length;
  const confirm = (keys: string[] | null) => change({ sets: confirmed(draft.sets, session, keys) });
  const choose = (label: string) => {
    const chosen = sessions.find((one) => one.label === label) ?? null;
    setOpen(null);
    change({
      session: chosen?.label ?? null,
      planVersion: chosen ? planVersion : null,
      sets: plannedSets(chosen),
      swaps: {},
      minutes: chosen?.minutes ?? draft.minutes,
      step: chosen ? 'sets' : 'effort',
    });
  };
  const setOf = (key: string, at: number, set: SetDraft) => {
    const sets = (draft.sets[key] ?? []).map((before, place) => (place === at ? set : before));
    change({ sets: { ...draft.sets, [key]: sets } });
  };
  const setsOf = (drill: PhoneDrill | undefined) =>
    drill && (
      <DrillSets
        key={drill.key}
        drill={drill}
        sets={draft.sets}
        open={open}
        onOpen={setOpen}
        onSet={setOf}
        onConfirm={() => confirm(drill.sides.map((side) => setKey(side.rungId, side.side)))}
      />
    );
  return (
    <>
      <main>
        {sessions.length > 0 && draft.correctsId === null ? (
          <SessionChoice label={draft.session} sessions={sessions} choose={choose} />
        ) : null}
        {hasSets ? (
          <>
            <button type="button" className="act" onClick={() => confirm(null)} disabled={left === 0}>
              <Tick /> {left === 0 ? 'All sets filled in' : 'The rest as planned'}
            </button>
            <p className="quiet" style={{ margin: '8px 0 12px' }}>
              Tap a number to change only what differed.
            </p>
          </>
        ) : null}
        {planned?.drills.map((drill) =>
          drill.limit?.out ? (
            <LimitedDrill
              key={drill.key}
              drill={drill}
              choice={draft.swaps?.[drill.key]}
              onChoose={(choice) => change(changeSwap(draft, planned, { key: drill.key, choice }))}
            >
              {setsOf(trainedDrill(drill, draft.swaps))}
            </LimitedDrill>
          ) : (
            setsOf(drill)
          ),
        )}
      </main>
      <div className="phone-foot">
        {left > 0 ? (
          <p className="why">
            {left === 1 ? '1 set is' : `${left} sets are`} not filled in: kept as not told.
          </p>
        ) : null}
        <button type="button" className="act act-filled" onClick={() => change({ step: 'effort' })}>
          Next: how hard
        </button>
      </div>
    </>
  );
}

/** Every open set, or those of the given drill sides, becomes as planned. */
function confirmed(sets: Draft['sets'], session: PhoneSession | null, keys: string[] | null): Draft['sets'] {
  const result = { ...sets };
  for (const { rungId, side, target, tries } of session?.drills.flatMap((drill) => drill.sides) ?? []) {
    const key = setKey(rungId, side);
    if (keys && !keys.includes(key)) continue;
    result[key] = (result[key] ?? []).map((set) =>
      set.how === 'open' ? { how: 'as-planned', value: target, tried: tries, faults: [] } : set,
    );
  }
  return result;
}

type ChoiceProps = { label: string | null; sessions: PhoneSession[]; choose: (label: string) => void };

function SessionChoice({ label, sessions, choose }: ChoiceProps) {
  return (
    <label className="between" style={{ marginBottom: 10 }}>
      <span className="quiet">Session</span>
      <select className="text session" value={label ?? ''} onChange={(event) => choose(event.target.value)}>
        {sessions.map((session) => (
          <option key={session.label} value={session.label}>
            {session.label}
          </option>
        ))}
        <option value="">something else</option>
      </select>
    </label>
  );
}
