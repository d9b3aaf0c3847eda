import type { Metadata } from 'next';
import { may } from '#lib/auth/permissions.ts';
import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { boardFilter } from '#lib/schemas/board.ts';
import { loadBoard } from '#lib/usecases/load-board.ts';
import { Board } from './_board/board.tsx';
import { PreparesActs } from './_board/prepares.tsx';

export const metadata: Metadata = { title: 'Board' };

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> };

export default async function BoardPage({ searchParams }: Props) {
  const actor = await requireActor('see-board');
  const filter = boardFilter.parse(await searchParams);
  const board = await loadBoard(actor, filter, now());
  const canAct = may(actor.role, 'act-on-reasons');
  const prepares = !canAct && may(actor.role, 'prepare-acts');
  return (
    <PreparesActs on={prepares}>
      <Board board={board} views={board.views} coach={filter.coach} canAct={canAct} lines={board.lines} />
    </PreparesActs>
  );
}
