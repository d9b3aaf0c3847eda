'use client';
import { useState } from 'react';
import type { OtherDrill } from '#lib/views/phone-other-drills.ts';
import type { PhoneDrill, PhoneSession } from '#lib/views/phone-session.ts';
import { type Draft, plannedSets, type SetDraft, setKey } from '../_phone/draft.ts';
import { addExtra, drillsToAdd, dropExtra, setsOfExtras } from '../_phone/extras.ts';
import { Tick } from '../_phone/icons.tsx';
import { asPlanned, countOpen, OPEN_SET, plannedOf, restNotDone } from '../_phone/set-acts.ts';
import { readySound } from '../_phone/signals.ts';
import { changeSwap, trainedDrill } from '../_phone/swaps.ts';
import { beginsRest } from '../_phone/timer.ts';
import { AddDrill } from './add-drill.tsx';
import { DrillSets, type OpenSet } from './drill-sets.tsx';
import { LimitedDrill } from './limited-drill.tsx';
import { RestBar } from './rest-bar.tsx';
import type { Change } from './use-draft.ts';

type Props = {
  draft: Draft;
  /** As it is trained, and as it is planned. */
  session: PhoneSession | null;
  planned: PhoneSession | null;
  sessions: PhoneSession[];
  planVersion: number | null;
  otherDrills: readonly OtherDrill[];
  /** It is filled in while it is trained, not for a day before. */
  isToday: boolean;
  change: Change;
};

/** Every planned set is there; one tap confirms the rest, a tap on a number changes only what differed. */
export function StepSets({
  draft,
  session,
  planned,
  sessions,
  planVersion,
  otherDrills,
  isToday,
  change,
}: Props) {
  const [open, setOpen] = useState<OpenSet>(null);
  const [restEndsAt, setRestEndsAt] = useState<number | null>(null);
  const asked = plannedOf(session);
  const hasSets = [...asked.values()].some((sets) => sets.length > 0);
  const left = countOpen(draft.sets, asked);
  /** Other sets for some of the drill sides. */
  const put = (keys: string[], setsFor: (sets: SetDraft[], key: string) => SetDraft[]) => {
    const changed = keys.map((key) => [key, setsFor(draft.sets[key] ?? [], key)]);
    change({ sets: { ...draft.sets, ...Object.fromEntries(changed) } });
  };
  const confirm = (keys: string[]) => put(keys, (sets, key) => asPlanned(sets, asked.get(key)));
  const choose = (label: string) => {
    const chosen = sessions.find((one) => one.label === label) ?? null;
    setOpen(null);
    change({
      session: chosen?.label ?? null,
      planVersion: chosen ? planVersion : null,
      sets: { ...setsOfExtras(draft), ...plannedSets(chosen) },
      swaps: {},
      minutes: chosen?.minutes ?? draft.minutes,
    });
  };
  const rest = isToday ? (session?.restSeconds ?? 0) : 0;
  const setOf = (key: string, at: number, set: SetDraft) => {
    if (rest > 0 && left > 1 && beginsRest(draft.sets[key]?.[at], set)) {
      readySound();
      setRestEndsAt(Date.now() + rest * 1_000);
    }
    put([key], (sets) => sets.map((before, place) => (place === at ? set : before)));
  };
  const add = (other: OtherDrill) => {
    const added = addExtra(draft, other);
    change(added);
    const [first] = added.extras?.at(-1)?.sides ?? [];
    if (first) setOpen({ key: setKey(first.rungId, first.side), at: 0 });
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
        asked={asked}
        onConfirm={() => confirm(keysOf(drill))}
        onMore={() => put(keysOf(drill), (sets) => [...sets, OPEN_SET])}
        onRestNotDone={() => put(keysOf(drill), restNotDone)}
        onDropLast={(key) => put([key], (sets) => sets.slice(0, -1))}
        onDrop={isExtra(drill, draft) ? () => change(dropExtra(draft, drill)) : null}
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
            <button
              type="button"
              className="act"
              onClick={() => confirm([...asked.keys()])}
              disabled={left === 0}
            >
              <Tick /> {left === 0 ? 'All sets filled in' : 'The rest as planned'}
            </button>
            <p className="quiet" style={{ margin: '8px 0 12px' }}>
              Tap a number to change only what differed.
            </p>
          </>
        ) : (
          <p className="quiet">Nothing is planned here. Add what you did, or go on.</p>
        )}
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
        {(draft.extras ?? []).filter((extra) => session?.drills.includes(extra)).map(setsOf)}
        <AddDrill others={drillsToAdd(otherDrills, session, planned)} today={draft.date} onAdd={add} />
      </main>
      <div className="phone-foot">
        {restEndsAt === null ? null : <RestBar endsAt={restEndsAt} onSkip={() => setRestEndsAt(null)} />}
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

function keysOf({ sides }: PhoneDrill): string[] {
  return sides.map(({ rungId, side }) => setKey(rungId, side));
}

function isExtra(drill: PhoneDrill, { extras = [] }: Draft): boolean {
  return extras.some((extra) => extra.key === drill.key);
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
