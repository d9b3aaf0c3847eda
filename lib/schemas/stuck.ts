import { z } from 'zod';

/** What in the outbox is to be tried again at once. */
export const stuckKind = z.strictObject({
  kind: z.enum(['mail', 'push', 'after-check-in'], {
    error: 'kind must be mail, push or after-check-in',
  }),
});
export type StuckKind = z.infer<typeof stuckKind>['kind'];
