import type { IntakePages, IntakeStep } from '#lib/domain/intake/draft.ts';
import type { ChangePage } from './use-intake.ts';

/** What every page of the intake is given. */
export type AskProps<Step extends IntakeStep> = {
  page: IntakePages[Step];
  change: ChangePage;
  error: (field: string) => string | undefined;
  coach: string;
};
