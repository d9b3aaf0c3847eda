import { defineRoute } from '#lib/edge/define-route.ts';
import { filmRequestAddress } from '#lib/schemas/clip.ts';
import { takeBackFilm } from '#lib/usecases/film/take-back-film.ts';

export const POST = defineRoute(
  { permission: 'act-on-reasons', params: filmRequestAddress },
  ({ actor, params, now }) => takeBackFilm(actor, params.requestId, now),
);
