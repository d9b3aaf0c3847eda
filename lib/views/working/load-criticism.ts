import type { CheckKind } from '#lib/domain/vocabulary.ts';

const OF_LOAD: readonly CheckKind[] = [
  'load-jump',
  'new-hardest',
  'stacked-stress',
  'no-let-up',
  'return-too-fast',
];

/** Whether the published criticism of load ratios belongs to this kind of reason. */
export function isOfLoad(kind: CheckKind): boolean {
  return OF_LOAD.includes(kind);
}

/** What is published against ratios of load. Each claim with its source, so that a coach can read it. */
export const LOAD_CRITICISM = {
  said: 'Dividing this week by usual weeks is a common way to say that a week was big, and there is good published criticism of it. When the week is part of what it is divided by, the two go together by arithmetic alone: weeks that have nothing to do with each other show a correlation of 0.5. Small usual weeks make large ratios out of little. Replaced by a constant, the usual load of one data set told injured from uninjured players about as well as the real one did (odds ratio 1.95 against 2.45), and neither was much better than chance. In the one trial in which teams were steered by the ratio, 482 young footballers, it made no difference to health problems. We know of no study of it with hand balancers. That is why the week here is never part of the usual week, why a visible cause is asked for beside the number, why a ratio alone changes no plan, and why nothing here speaks of injury.',
  sources: [
    'Lolli L et al. Mathematical coupling causes spurious correlation. Br J Sports Med 2019;53(15):921-922',
    'Windt J, Gabbett TJ. On coupled and uncoupled ratios. Br J Sports Med 2019 (0.52 in 1,000 simulated athletes; 0.5 by algebra)',
    'Impellizzeri FM et al. Conceptual issues and fundamental pitfalls. Int J Sports Physiol Perform 2020;15(6):907-913',
    'Impellizzeri FM et al. What role do chronic workloads play. Sports Med 2021;51:581-592 (the constant)',
    'Dalen-Lorentsen T et al. Cluster randomised trial, 482 youth footballers. Br J Sports Med 2021;55(2):108-114',
  ],
} as const;
