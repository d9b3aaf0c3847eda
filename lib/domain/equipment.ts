/** What a drill is done on: floor, bars, rings. */
export const STANDS_ON = ['hard-floor', 'mat', 'parallel-bars', 'rings', 'bar'] as const;
/** What is needed beside it. */
export const KIT = ['wall', 'box', 'block', 'stick', 'scale'] as const;

export const EQUIPMENT_LABELS: Record<(typeof STANDS_ON)[number] | (typeof KIT)[number], string> = {
  'hard-floor': 'hard floor',
  mat: 'mat',
  'parallel-bars': 'low parallel bars',
  rings: 'rings',
  bar: 'bar',
  wall: 'wall',
  box: 'box',
  block: 'block',
  stick: 'stick',
  scale: 'scale',
};
