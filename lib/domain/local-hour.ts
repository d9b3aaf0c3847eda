/** The hour from 0 to 23 that the wall clock of a zone (IANA name) shows at an instant. */
export function localHourOf(instant: Date, zone: string): number {
  return Number(formatterOf(zone).format(instant));
}

const formatters = new Map<string, Intl.DateTimeFormat>();

function formatterOf(zone: string): Intl.DateTimeFormat {
  const known = formatters.get(zone);
  if (known) return known;
  const made = new Intl.DateTimeFormat('en-GB', { timeZone: zone, hourCycle: 'h23', hour: '2-digit' });
  formatters.set(zone, made);
  return made;
}
