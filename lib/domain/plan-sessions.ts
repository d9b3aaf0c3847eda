/** Sessions a plan can have, as the phone names them. */
export const PLAN_SESSIONS = ['A', 'B', 'short'] as const;
