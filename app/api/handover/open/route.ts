import { defineOpenRoute } from '#lib/edge/define-open-route.ts';
import type { RouteHandler } from '#lib/edge/define-route.ts';
import { linkedReport, linkRefused } from '#lib/edge/handover-page.ts';
import { openLinkSchema } from '#lib/schemas/handover-link.ts';
import { openLink } from '#lib/usecases/handover/open-link.ts';

const open = defineOpenRoute(
  { body: openLinkSchema, limit: { name: 'handover-link', max: 40, windowSeconds: 3600 } },
  async ({ body, now }) => linkedReport(await openLink(body, now), body),
);

/** The answer is the page itself: a reader has no session, and nothing of it stays in the browser. */
export const POST: RouteHandler = async (request, context) => {
  const posted = request.clone();
  return linkRefused(await open(request, context), posted);
};
