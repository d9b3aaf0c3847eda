/** Numbers of the gap finder, each with its unit and where it comes from. */

/** Share of the pass mark from which a part is near. Own. */
export const NEAR_SHARE = 0.75;
/** Degrees or cm short of a range that still count as near: about the error of measuring. Own. */
export const NEAR_RANGE = { 'range-up': 10, 'range-down': 5 } as const;
/** Pain of 0-10 from which a tissue is sore and a part is not covered. After Thomee 1997 (0-2 safe, 3-5 acceptable). */
export const SORE_FROM = 3;
/** Pain of 0-10 from which the work stops and a clinician is asked. Rule of this product for all clients. */
export const STOP_FROM = 6;
/** Days back in which a pain score counts. Own. */
export const PAIN_DAYS = 14;
/** Weight (0-1) on a tissue from which the mobility of that tissue belongs to a part. Own. */
export const MOBILITY_FROM = 0.5;
/** A drill serves another part too from this share of the load on each tissue that the part loads. Own. */
export const SERVES_TOO_FROM = 0.9;
/** Strength drills a session. Common practice, no source. */
export const MOST_STRENGTH_A_SESSION = 4;
/** A tissue whose week is this much over usual counts like pain 10. Own. */
export const DOUBLE_LOAD_POINTS = 10;
/** Minutes of a stretch or range a session: 5-10 minutes a muscle and week (Thomas 2018, Ingram 2025). */
export const RANGE_MINUTES = 3;
/** A tissue is loaded from this part over its usual week: half of all weeks are a little over. Own. */
export const OVER_USUAL_FROM = 0.1;
