import { defineRoute } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { mailNotice } from '#lib/schemas/notice.ts';
import { chooseMailNotice } from '#lib/usecases/choose-notices.ts';

export const POST = defineRoute(
  { permission: 'check-in', body: mailNotice, limit: LIMITS.notices },
  ({ actor, body, now }) => chooseMailNotice(actor, body.on, now),
);
