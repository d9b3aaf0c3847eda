/** The unit of amounts in a measure, as it stands in tables: s, made, reps, degrees or cm. */
export function unitOf(measure: string | null): string | null {
  switch (measure) {
    case 'hold':
    case 'lowering':
      return 's';
    case 'made-tried':
      return 'made';
    case 'range-up':
      return 'degrees';
    case 'range-down':
      return 'cm';
    default:
      return measure;
  }
}
