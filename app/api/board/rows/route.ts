import { defineRoute } from '#lib/edge/define-route.ts';
import { moreRows } from '#lib/schemas/board-reads.ts';
import { loadMoreRows } from '#lib/usecases/load-more-rows.ts';

export const GET = defineRoute({ permission: 'see-board', query: moreRows }, ({ actor, query, now }) => {
  const { of, after, ...filter } = query;
  return loadMoreRows(actor, { filter, of, after }, now);
});
