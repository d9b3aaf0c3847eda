import type { TissueSide } from '#lib/checks/types.ts';
import type { Tissue } from '#lib/domain/vocabulary.ts';

/** The tissues as a coach says them. */
export const TISSUE_WORDS: Record<Tissue, string> = {
  'wrist-back': 'Wrist bent back',
  'wrist-forward': 'Wrist bent forward',
  'elbow-bending': 'Elbow, bending side',
  'elbow-straightening': 'Elbow, straightening side',
  'shoulder-overhead': 'Shoulder overhead',
  'shoulder-forward': 'Shoulder forward',
  'upper-back': 'Upper back',
  'hip-flexors': 'Hip flexors',
  hamstrings: 'Hamstrings',
  neck: 'Neck',
  'shoulder-behind': 'Shoulder behind the back',
  'low-back': 'Low back',
};

/** The two halves of a tissue-and-side key. */
export function partsOfTissueSide(key: TissueSide): { tissue: Tissue; side: 'left' | 'right' } {
  const [tissue, side] = key.split(':');
  return { tissue: tissue as Tissue, side: side === 'left' ? 'left' : 'right' };
}
