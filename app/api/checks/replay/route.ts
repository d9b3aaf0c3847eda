import { defineRoute } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { settingsToReplay } from '#lib/schemas/settings.ts';
import { replaySettings } from '#lib/usecases/replay-settings.ts';
import { replayPart } from '#lib/views/replay-words.ts';

export const POST = defineRoute(
  { permission: 'edit-clients', body: settingsToReplay, limit: LIMITS.replay },
  async ({ actor, body, now }) => replayPart(await replaySettings(actor, body, now)),
);
