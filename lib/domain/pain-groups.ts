import type { PainRegion, PainSide } from './vocabulary.ts';

export type PainGroup = {
  key: string;
  label: string;
  /** True: asked left and right at once; false: one cell in the middle, the side asked after. */
  paired: boolean;
  regions: readonly PainRegion[];
};

/** Places as the phone asks them, ordered as in a handstand: feet on top, hands at the bottom by the thumb. */
export const PAIN_GROUPS: readonly PainGroup[] = [
  { key: 'foot', label: 'ankle, foot', paired: true, regions: ['ankle-foot'] },
  { key: 'knee', label: 'knee', paired: true, regions: ['knee'] },
  { key: 'thigh', label: 'back of thigh', paired: true, regions: ['back-of-thigh'] },
  { key: 'hip', label: 'hip, groin', paired: true, regions: ['hip-front', 'groin'] },
  { key: 'back', label: 'back, ribs', paired: false, regions: ['low-back', 'upper-back', 'ribs'] },
  { key: 'neck', label: 'neck', paired: false, regions: ['neck'] },
  { key: 'head', label: 'head, eyes', paired: false, regions: ['head', 'eyes'] },
  {
    key: 'shoulder',
    label: 'shoulder',
    paired: true,
    regions: ['shoulder-front', 'shoulder-top', 'shoulder-side', 'shoulder-blade'],
  },
  {
    key: 'elbow',
    label: 'elbow',
    paired: true,
    regions: ['elbow-inner', 'elbow-outer', 'elbow-front', 'elbow-back'],
  },
  {
    key: 'wrist',
    label: 'wrist',
    paired: true,
    regions: ['wrist-back', 'wrist-palm-side', 'wrist-thumb-side', 'wrist-little-finger-side'],
  },
  { key: 'hand', label: 'hand, fingers', paired: true, regions: ['hand-fingers'] },
];

export function groupOfRegion(region: PainRegion): string {
  return PAIN_GROUPS.find((group) => group.regions.includes(region))?.key ?? '';
}

/** "right elbow", "neck". */
export function groupInWords(group: string, side: PainSide): string {
  const label = PAIN_GROUPS.find((one) => one.key === group)?.label ?? group;
  return side === 'middle' ? label : `${side} ${label}`;
}
