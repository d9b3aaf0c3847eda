import { type PainRegion, TISSUES, type Tissue } from '#lib/domain/vocabulary.ts';

/** Which tissues belong to which pain region. Common practice, no source; a region without a loaded tissue is empty. */
const TISSUES_OF_REGION: Readonly<Record<PainRegion, readonly Tissue[]>> = {
  'wrist-back': ['wrist-back'],
  'wrist-palm-side': ['wrist-forward', 'wrist-back'],
  'wrist-thumb-side': ['wrist-back', 'wrist-forward'],
  'wrist-little-finger-side': ['wrist-back', 'wrist-forward'],
  'hand-fingers': ['wrist-forward'],
  'elbow-inner': ['elbow-bending', 'wrist-forward'],
  'elbow-outer': ['elbow-bending', 'wrist-forward', 'wrist-back'],
  'elbow-front': ['elbow-bending'],
  'elbow-back': ['elbow-straightening'],
  'shoulder-front': ['shoulder-forward', 'shoulder-behind', 'shoulder-overhead'],
  'shoulder-top': ['shoulder-overhead'],
  'shoulder-side': ['shoulder-overhead'],
  'shoulder-blade': ['upper-back', 'shoulder-overhead'],
  neck: ['neck'],
  'upper-back': ['upper-back'],
  ribs: ['upper-back'],
  'low-back': ['low-back'],
  'hip-front': ['hip-flexors'],
  groin: ['hamstrings'],
  'back-of-thigh': ['hamstrings'],
  knee: [],
  'ankle-foot': [],
  head: ['neck'],
  eyes: [],
};

/** The tissues to look at when this region hurts; empty when no drill of the trade loads it. */
export function tissuesOfRegion(region: PainRegion): readonly Tissue[] {
  return TISSUES_OF_REGION[region];
}

/** Words for the tissues, lower case: they stand inside sentences. */
export const TISSUE_LABELS: Readonly<Record<Tissue, string>> = {
  'wrist-back': 'wrist bent back',
  'wrist-forward': 'wrist bent forward and grip',
  'elbow-bending': 'elbow, bending side',
  'elbow-straightening': 'elbow, straightening side',
  'shoulder-overhead': 'shoulder overhead',
  'shoulder-forward': 'shoulder forward, straight arm',
  'upper-back': 'upper back and pulling',
  'hip-flexors': 'hip flexors',
  hamstrings: 'hamstrings and adductors',
  neck: 'neck',
  'shoulder-behind': 'shoulder behind the body',
  'low-back': 'low back',
};

/** Whether a text names a tissue. */
export function isTissue(text: string | undefined): text is Tissue {
  return TISSUES.some((tissue) => tissue === text);
}
