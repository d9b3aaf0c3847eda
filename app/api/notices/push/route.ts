import { defineRoute } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { pushPhone } from '#lib/schemas/notice.ts';
import { addNoticePhone } from '#lib/usecases/choose-notices.ts';

export const POST = defineRoute(
  { permission: 'check-in', body: pushPhone, limit: LIMITS.notices },
  ({ actor, body, now }) => addNoticePhone(actor, body, now),
);
