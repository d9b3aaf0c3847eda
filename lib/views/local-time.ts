/** "07:40" of an instant in a zone. */
export function clockTime(instant: string | Date, zone: string): string {
  return new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', timeZone: zone }).format(
    new Date(instant),
  );
}

/** "October 2025" of a local date. */
export function monthAndYear(date: string): string {
  const month = new Intl.DateTimeFormat('en-GB', { month: 'long', timeZone: 'UTC' });
  return `${month.format(new Date(`${date}T00:00:00Z`))} ${date.slice(0, 4)}`;
}

/** "Lisbon" of Europe/Lisbon. */
export function placeOfZone(zone: string): string {
  return (zone.split('/').at(-1) ?? zone).replaceAll('_', ' ');
}
