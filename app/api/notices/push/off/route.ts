import { defineRoute } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { pushPhoneOff } from '#lib/schemas/notice.ts';
import { dropNoticePhone } from '#lib/usecases/choose-notices.ts';

export const POST = defineRoute(
  { permission: 'check-in', body: pushPhoneOff, limit: LIMITS.notices },
  ({ actor, body }) => dropNoticePhone(actor, body.endpoint),
);
