import type { Landmark } from './landmarks.ts';

export const MASS_MODELS = ['de-leva-women', 'de-leva-men', 'winter'] as const;
export type MassModel = (typeof MASS_MODELS)[number];

type Segment = {
  name: string;
  from: Landmark;
  to: Landmark;
  /** Part of the mass of the body of one of them, and how many there are. */
  mass: number;
  count: 1 | 2;
  /** Where its centre lies on the way from `from` to `to`, 0-1. */
  centre: number;
};

/** Hands are lumped at the wrist, the head at the ear; the foot lies halfway from ankle to toe. */
const WAY = {
  head: { from: 'ear', to: 'ear', count: 1 },
  trunk: { from: 'shoulder', to: 'hip', count: 1 },
  'upper arm': { from: 'shoulder', to: 'elbow', count: 2 },
  forearm: { from: 'elbow', to: 'wrist', count: 2 },
  hand: { from: 'wrist', to: 'wrist', count: 2 },
  thigh: { from: 'hip', to: 'knee', count: 2 },
  shank: { from: 'knee', to: 'ankle', count: 2 },
  foot: { from: 'ankle', to: 'toe', count: 2 },
} as const satisfies Record<string, Pick<Segment, 'from' | 'to' | 'count'>>;
type Name = keyof typeof WAY;

/**
 * Mass and centre of each segment.
 * Winter: D. A. Winter, Biomechanics and Motor Control of Human Movement, 4th ed. 2009, table 4.1 (Dempster 1955).
 * De Leva: P. de Leva, J Biomech 29(9), 1996, 1223-1230, tables for women and men, trunk from mid-shoulder to mid-hip.
 */
const ROWS: Record<MassModel, Record<Name, readonly [mass: number, centre: number]>> = {
  winter: {
    head: [0.081, 0],
    trunk: [0.497, 0.5],
    'upper arm': [0.028, 0.436],
    forearm: [0.016, 0.43],
    hand: [0.006, 0],
    thigh: [0.1, 0.433],
    shank: [0.0465, 0.433],
    foot: [0.0145, 0.5],
  },
  'de-leva-men': {
    head: [0.0694, 0],
    trunk: [0.4346, 0.431],
    'upper arm': [0.0271, 0.5772],
    forearm: [0.0162, 0.4574],
    hand: [0.0061, 0],
    thigh: [0.1416, 0.4095],
    shank: [0.0433, 0.4395],
    foot: [0.0137, 0.5],
  },
  'de-leva-women': {
    head: [0.0668, 0],
    trunk: [0.4257, 0.3782],
    'upper arm': [0.0255, 0.5754],
    forearm: [0.0138, 0.4559],
    hand: [0.0056, 0],
    thigh: [0.1478, 0.3612],
    shank: [0.0481, 0.4352],
    foot: [0.0129, 0.5],
  },
};

/** The segments of a model. A table whose masses do not add up to the body (0.1 %) is refused: it was copied wrongly. */
export function segmentsOf(model: MassModel): readonly Segment[] {
  const segments = Object.entries(ROWS[model]).map(([name, [mass, centre]]) => ({
    name,
    ...WAY[name as Name],
    mass,
    centre,
  }));
  if (!addUp(segments)) throw new Error(`the masses of ${model} do not add up to a body`);
  return segments;
}

/** Whether masses, as parts of the body's, add up to it within 0.1 %; paired segments are counted twice. */
export function addUp(segments: readonly { mass: number; count: number }[]): boolean {
  return Math.abs(segments.reduce((all, { mass, count }) => all + mass * count, 0) - 1) <= 0.001;
}
