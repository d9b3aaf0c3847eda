import { defineRoute } from '#lib/edge/define-route.ts';
import { boardChanges } from '#lib/schemas/board-reads.ts';
import { loadBoardChanges } from '#lib/usecases/load-board-changes.ts';

export const GET = defineRoute({ permission: 'see-board', query: boardChanges }, ({ actor, query, now }) => {
  const { stamp, ...filter } = query;
  return loadBoardChanges(actor, { filter, stamp }, now);
});
