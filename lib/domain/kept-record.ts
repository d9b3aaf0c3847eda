/** How much is kept of one client, by kind. Dates are local dates of check-ins; null: none. */
export type KeptCounts = {
  checkIns: number;
  firstDate: string | null;
  lastDate: string | null;
  painScores: number;
  questions: number;
  coachWords: number;
  pictures: number;
  /** Sent by the client; files that are no longer kept count too. */
  films: number;
  plans: number;
  reasons: number;
  notes: number;
  limits: number;
};

/** Kinds of line in the record of acts, as a lead filters them. */
export const AUDIT_KINDS = [
  'all',
  'reads',
  'out',
  'roles',
  'consents',
  'deletions',
  'sign-ins',
  'acts',
] as const;
export type AuditKind = (typeof AUDIT_KINDS)[number];
