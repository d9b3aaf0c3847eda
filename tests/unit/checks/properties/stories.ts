import type { Numbers } from './draft.ts';
import { OF_LIFE } from './stories-of-life.ts';
import { OF_TRAINING } from './stories-of-training.ts';

export const STORIES = { ...OF_LIFE, ...OF_TRAINING };

/** What is going on in a client's life, by name. */
export type Story = Numbers & { name: keyof typeof STORIES };
