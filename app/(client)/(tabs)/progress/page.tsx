import type { Metadata } from 'next';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { loadProgress } from '#lib/usecases/load-progress.ts';
import { SendState } from '../../_phone/send-state.tsx';
import { BalanceWindow } from './balance-window.tsx';
import { LadderBlock } from './ladder-block.tsx';
import { LeftAndRight } from './left-and-right.tsx';
import { PlanChanges } from './plan-changes.tsx';

export const metadata: Metadata = { title: 'Progress' };

export default async function ProgressPage() {
  const actor = await requireActor('see-own-training');
  const progress = await loadProgress(actor, now());
  return (
    <>
      <header className="phone-head">
        <span className="mark">{progress.teamName}</span>
        <SendState clientId={progress.clientId} received={null} />
      </header>
      <main>
        <h1>My ladders</h1>
        {progress.ladders.length === 0 ? (
          <p className="quiet">Your ladders stand here once your coach has placed you on their rungs.</p>
        ) : null}
        {progress.ladders.map((ladder) => (
          <LadderBlock key={ladder.ladderId} ladder={ladder} today={progress.date} />
        ))}
        <BalanceWindow edges={progress.edges} />
        <LeftAndRight sides={progress.sides} />
        <PlanChanges changes={progress.changes} today={progress.date} />
      </main>
    </>
  );
}
