import { z } from 'zod';

/** What in the outbox is to be tried again at once. */
export const stuckKind = z.strictObject({
  kind: z.enum(['mail', 'push', 'after-check-in', 'check-clip'], {
    error: 'kind must be mail, push, after-check-in or check-clip',
  }),
});
export type StuckKind = z.infer<typeof stuckKind>['kind'];
