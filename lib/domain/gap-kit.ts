/** Kit that the gap finder asks about: all that `kitNeeded` can name, and the wedge, which is a support only. */
export const GAP_KIT = ['parallel-bars', 'bar', 'rings', 'box', 'block', 'wedge', 'stick', 'scale'] as const;
