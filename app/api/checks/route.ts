import { defineRoute } from '#lib/edge/define-route.ts';
import { settingsToSave } from '#lib/schemas/settings.ts';
import { saveSettings } from '#lib/usecases/save-settings.ts';

export const POST = defineRoute({ permission: 'manage-team', body: settingsToSave }, ({ actor, body, now }) =>
  saveSettings(actor, { ...body, clientId: null }, now),
);
