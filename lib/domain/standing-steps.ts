import type { Standing } from './vocabulary.ts';

/**
 * Which standings may follow one. Nobody is invited twice, `starting` comes by itself when an invited client signs in
 * for the first time, and who left comes `back`. Own choice.
 */
export const NEXT_STANDINGS: Readonly<Record<Standing, readonly Standing[]>> = {
  invited: ['starting', 'in-training', 'paused', 'left'],
  starting: ['in-training', 'paused', 'ending', 'left'],
  'in-training': ['paused', 'ending', 'left'],
  paused: ['back', 'in-training', 'ending', 'left'],
  ending: ['in-training', 'paused', 'left'],
  left: ['back'],
  back: ['in-training', 'paused', 'ending', 'left'],
};

/** Standings in which a client has days off: no nights, nothing is waited for. */
export const RESTING_STANDINGS: readonly Standing[] = ['paused', 'left'];
