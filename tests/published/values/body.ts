import { weightsOnSupport } from '#lib/checks/supports.ts';
import type { Support, Tissue } from '#lib/domain/vocabulary.ts';
import { STARTER_LIBRARY } from '#lib/library/library.ts';
import { fromSource, type Line, type OutsideValue } from '../outside-value.ts';
import { FLOOR_PIKE, FRONT_SUPPORT, HIGH_PIKE, LIFTED, partOfFull } from './winter-body.ts';

const rung = (key: string) =>
  STARTER_LIBRARY.ladders.flatMap((ladder) => ladder.rungs).find((each) => each.key === key);

/** Half a hundredth of rounding in the library. */
const HUNDREDTH = 0.005 + 1e-9;

function moment(tissue: Tissue, key: string, how: string, value: number): Line {
  return { what: `${key}: ${tissue}`, how, value, within: HUNDREDTH, got: () => rung(key)?.weights[tissue] };
}
const POSITIONS = {
  tuck: partOfFull({ hip: 130, shank: -20 }),
  open120: partOfFull({ hip: 120, shank: -20 }),
  open110: partOfFull({ hip: 110, shank: -20 }),
  open100: partOfFull({ hip: 100, shank: -20 }),
  advanced: partOfFull({ hip: 90, shank: 0 }),
  folded: partOfFull({ hip: 90, shank: -45 }),
  straddle60: partOfFull({ straddle: 60 }),
  straddle45: partOfFull({ straddle: 45 }),
  straddle30: partOfFull({ straddle: 30 }),
  halfLay: partOfFull({ shank: 90 }),
};
const WINTER =
  'Winter 2009, Biomechanics and Motor Control of Human Movement, table 4.1; lengths of Drillis & Contini 1966';
const oneLeg = (other: number) => (1 + other) / 2;

function share(key: string, how: string, value: number, within = HUNDREDTH): Line {
  return {
    what: `${key}: share of body weight on the hands`,
    how,
    value,
    within,
    got: () => rung(key)?.share,
  };
}

function onSupport(support: Support, tissue: Tissue, value: number): Line {
  return {
    what: `${support}: ${tissue} of 0.5`,
    value,
    within: 1e-12,
    got: () => weightsOnSupport({ [tissue]: 0.5 }, support)[tissue],
  };
}

export const BODY: OutsideValue[] = [
  ...fromSource(WINTER, 'derived', [
    moment('shoulder-forward', 'PL.2', 'hip 130, shank -20', POSITIONS.tuck),
    moment('shoulder-forward', 'PL.4', 'hip 120, shank -20', POSITIONS.open120),
    moment('shoulder-forward', 'PL.5', 'hip 110, shank -20', POSITIONS.open110),
    moment('shoulder-forward', 'PL.6', 'hip 100, shank -20', POSITIONS.open100),
    moment('shoulder-forward', 'PL.7', 'hip 90, shank 0', POSITIONS.advanced),
    moment('shoulder-forward', 'PL.8', 'half full, half tuck', oneLeg(POSITIONS.tuck)),
    moment('shoulder-forward', 'PL.9', 'straddle 60', POSITIONS.straddle60),
    moment('shoulder-forward', 'PL.10', 'half full, half hip 90 with shank -45', oneLeg(POSITIONS.folded)),
    moment('shoulder-forward', 'PL.11', 'straddle 45', POSITIONS.straddle45),
    moment('shoulder-forward', 'PL.12', 'hip 0, shank 90', POSITIONS.halfLay),
    moment('shoulder-forward', 'PL.13', 'straddle 30', POSITIONS.straddle30),
    moment('upper-back', 'LV.2', 'hip 130, shank -20', POSITIONS.tuck),
    moment('upper-back', 'LV.4', 'hip 110, shank -20', POSITIONS.open110),
    moment('upper-back', 'LV.5', 'hip 90, shank 0', POSITIONS.advanced),
    moment('upper-back', 'LV.6', 'half full, half tuck', oneLeg(POSITIONS.tuck)),
    moment('upper-back', 'LV.7', 'straddle 60', POSITIONS.straddle60),
    moment('upper-back', 'LV.8', 'half full, half hip 90 with shank -45', oneLeg(POSITIONS.folded)),
    moment('upper-back', 'LV.9', 'straddle 45', POSITIONS.straddle45),
    moment('upper-back', 'LV.10', 'hip 0, shank 90', POSITIONS.halfLay),
    moment('shoulder-behind', 'BK.3', 'hip 130, shank -20', POSITIONS.tuck),
    moment('shoulder-behind', 'BK.4', 'hip 90, shank 0', POSITIONS.advanced),
    moment('shoulder-behind', 'BK.5', 'half full, half hip 90 with shank -45', oneLeg(POSITIONS.folded)),
    moment('shoulder-behind', 'BK.6', 'straddle 45', POSITIONS.straddle45),
    share('H2.1', 'lever about the ankles, arms vertical', FRONT_SUPPORT),
    share('H2.3', 'lever about the ankles, trunk upright over the hands', HIGH_PIKE),
    // The library takes the 0.53 between hips at 120 and 60 degrees (0.545 and 0.515).
    share('H2.2', 'lever about the toes, hip 90, arms in line with the trunk', FLOOR_PIKE, 0.01),
    share('PU.6', '1 - 2 x (forearm 0.016 + hand 0.006)', LIFTED),
  ]),
  ...fromSource('de Leva 1996, J Biomech 29(9):1223-1230, table 4', 'derived', [
    share('PU.8', 'men: 1 - 2 x (forearm 0.0162 + hand 0.0061)', 1 - 2 * (0.0162 + 0.0061)),
    share('DP.3', 'women: 1 - 2 x (forearm 0.0138 + hand 0.0056)', 1 - 2 * (0.0138 + 0.0056)),
  ]),
  ...fromSource('Mier et al. 2014, Int J Exerc Sci 7(2):161-168, men', 'derived', [
    share('U1.2', 'middle of top 0.670 and bottom 0.746', (0.67 + 0.746) / 2),
    // The printed SD between men: 0.038 at the top.
    share('H2.1', 'top 0.670; straight-body statics lie above it by up to 0.05', 0.67, 0.05),
    share('W2.4', 'knee push-up, top: 0.525 as printed', 0.525),
  ]),
  ...fromSource('Gouvali & Boudolos 2005, J Strength Cond Res 19(1):146-151', 'printed', [
    // Eight men; the library stands at the middle of the push-up, theirs is the first moment of it.
    { ...share('U1.2', 'as printed', 0.664, 0.05), what: 'U1.2: against the first load of a push-up' },
    { ...share('W2.4', 'as printed', 0.529), what: 'W2.4: against the first load of a knee push-up' },
  ]),
  ...fromSource('Ebben et al. 2011, J Strength Cond Res 25(10):2891-2894', 'memory', [
    share('U1.1', 'hands on 61 cm', 0.41),
  ]),
  ...fromSource('Common practice, no source', 'practice', [
    onSupport('hands-turned-out', 'wrist-back', 0.425),
    onSupport('wedge', 'wrist-back', 0.375),
    onSupport('parallel-bars', 'wrist-back', 0.125),
    onSupport('parallel-bars', 'wrist-forward', 0.65),
    onSupport('fists', 'wrist-back', 0.075),
    onSupport('rings', 'wrist-back', 0.1),
    onSupport('soft-ground', 'wrist-back', 0.575),
    onSupport('bar-straps', 'wrist-forward', 0.3),
  ]),
];
