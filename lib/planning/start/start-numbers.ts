/** Numbers of start tests, each with its unit and where it comes from. */

/** Drills asked of one ladder at most: few tests are done well. Common practice, no source. */
export const TESTS_A_LADDER = 3;
/** Sets of a test at most; a pass mark with more is judged by these. Common practice, no source. */
export const TEST_SETS = 3;
/** Share of a pass mark done clean from which a rung is comfortably in reach. Common practice, no source. */
export const IN_REACH_SHARE = 0.75;
/** Sets fewer than the dose in the first week of a start; at least one is left. Common practice, no source. */
export const FIRST_WEEK_FEWER_SETS = 2;
/** Days of a start plan. Common practice, no source. */
export const START_PLAN_DAYS = 28;
/** Days of its first week. */
export const FIRST_WEEK_DAYS = 7;
