/*
 * A body of rigid parts, worked out here from print: masses (parts of body mass, both sides together) and mass centres
 * of Winter 2009, table 4.1; lengths (parts of height) of Drillis & Contini 1966. Own statics, none of it of the
 * project.
 */
const MASS = { head: 0.081, trunk: 0.497, upperArms: 0.056, forearms: 0.032, hands: 0.012 };
const LEGS = { thighs: 0.2, shanks: 0.093, feet: 0.029 };
const LONG = { upperArm: 0.186, forearm: 0.146, trunk: 0.818 - 0.53, thigh: 0.245, shank: 0.246 };
/** Mass centres from the upper end, as parts of the length; of the ear ahead of the shoulder and the foot, of height. */
const CENTRE = { limb: 0.433, upperArm: 0.436, forearm: 0.43, trunk: 0.5, ear: 0.107, foot: 0.0435 };

type Position = { hip?: number; shank?: number; straddle?: number };
const cos = (degrees: number) => Math.cos((degrees * Math.PI) / 180);

/** Gravity about the shoulder, trunk level, of body weight x height. Degrees; hip 0 straight, shank 0 level. */
function shoulderMoment({ hip = 0, shank = 0, straddle = 0 }: Position): number {
  const legs = LEGS.thighs + LEGS.shanks + LEGS.feet;
  const trunk = MASS.trunk * CENTRE.trunk * LONG.trunk - MASS.head * CENTRE.ear + legs * LONG.trunk;
  const thighs = (LEGS.thighs * CENTRE.limb + LEGS.shanks + LEGS.feet) * LONG.thigh;
  const shanks = LEGS.shanks * CENTRE.limb * LONG.shank + LEGS.feet * (LONG.shank + CENTRE.foot);
  return trunk + (thighs * cos(hip) + shanks * cos(shank)) * cos(straddle);
}

/** Part of the moment of the straight position. */
export function partOfFull(position: Position): number {
  return shoulderMoment(position) / shoulderMoment({});
}

type Part = readonly [mass: number, along: number];
const sum = (parts: readonly Part[]) => parts.reduce((total, [mass, along]) => total + mass * along, 0);
const LEG = LONG.thigh + LONG.shank;

/** Straight body over vertical arms, turning about the ankles; the feet stand, the arms count at the shoulder. */
export const FRONT_SUPPORT =
  sum([
    [LEGS.shanks, LONG.shank * (1 - CENTRE.limb)],
    [LEGS.thighs, LONG.shank + LONG.thigh * (1 - CENTRE.limb)],
    [MASS.trunk, LEG + CENTRE.trunk * LONG.trunk],
    [MASS.head, LEG + LONG.trunk + CENTRE.ear],
    [MASS.upperArms + MASS.forearms + MASS.hands, LEG + LONG.trunk],
  ]) /
  (LEG + LONG.trunk);

/** Trunk and arms upright over the hands, legs level, feet on a support: what the feet do not carry. */
export const HIGH_PIKE =
  1 -
  sum([
    [LEGS.thighs, CENTRE.limb * LONG.thigh],
    [LEGS.shanks, LONG.thigh + CENTRE.limb * LONG.shank],
    [LEGS.feet, LEG],
  ]) /
    LEG;

/** Hips at 90 degrees, arms in line with the trunk, toes in line with the legs; hands and toes on one level. */
export const FLOOR_PIKE = floorPike();

function floorPike(): number {
  const toes = 2 * CENTRE.foot;
  const lower = toes + LEG;
  const upper = LONG.trunk + LONG.upperArm + LONG.forearm;
  const ground = Math.hypot(lower, upper);
  const fromToes = (along: number) => (along * lower) / ground;
  const fromHip = (along: number) => (lower * lower + along * upper) / ground;
  return (
    sum([
      [LEGS.feet, fromToes(CENTRE.foot)],
      [LEGS.shanks, fromToes(toes + LONG.shank * (1 - CENTRE.limb))],
      [LEGS.thighs, fromToes(toes + LONG.shank + LONG.thigh * (1 - CENTRE.limb))],
      [MASS.trunk, fromHip(CENTRE.trunk * LONG.trunk)],
      [MASS.head, fromHip(LONG.trunk + CENTRE.ear)],
      [MASS.upperArms, fromHip(LONG.trunk + CENTRE.upperArm * LONG.upperArm)],
      [MASS.forearms, fromHip(LONG.trunk + LONG.upperArm + CENTRE.forearm * LONG.forearm)],
      [MASS.hands, ground],
    ]) / ground
  );
}

/** What moves in a hanging or dipping rep: all but forearms and hands. */
export const LIFTED = 1 - MASS.forearms - MASS.hands;
