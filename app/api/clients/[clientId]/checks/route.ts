import { defineRoute } from '#lib/edge/define-route.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { settingsToSave } from '#lib/schemas/settings.ts';
import { saveSettings } from '#lib/usecases/save-settings.ts';

export const POST = defineRoute(
  { permission: 'edit-clients', params: clientAddress, body: settingsToSave },
  ({ actor, params, body, now }) => saveSettings(actor, { ...body, clientId: params.clientId }, now),
);
