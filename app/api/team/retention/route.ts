import { defineRoute } from '#lib/edge/define-route.ts';
import { seeOther } from '#lib/edge/see-other.ts';
import { retentionSchema } from '#lib/schemas/rights.ts';
import { chooseRetention } from '#lib/usecases/rights/choose-retention.ts';

export const POST = defineRoute(
  { permission: 'keep-records', body: retentionSchema },
  async ({ actor, body }) => {
    await chooseRetention(actor, body);
    return seeOther('/team/records');
  },
);
