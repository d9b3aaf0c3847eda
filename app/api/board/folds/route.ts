import { defineRoute } from '#lib/edge/define-route.ts';
import { oneFold } from '#lib/schemas/board-reads.ts';
import { loadFold } from '#lib/usecases/load-fold.ts';

export const GET = defineRoute({ permission: 'see-board', query: oneFold }, ({ actor, query, now }) => {
  const { fold, ...filter } = query;
  return loadFold(actor, { filter, fold }, now);
});
