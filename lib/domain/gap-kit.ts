/** Kit that the gap finder asks about: a floor, a wall and a mat are taken to be there. */
export const GAP_KIT = ['parallel-bars', 'bar', 'rings', 'box', 'block', 'wedge', 'stick', 'scale'] as const;
