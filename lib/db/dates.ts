/** 'YYYY-MM-DD' to the Date at UTC midnight that Prisma wants for a date column. */
export function toDbDate(date: string): Date {
  return new Date(`${date}T00:00:00.000Z`);
}

/** A date column as Prisma gives it, to 'YYYY-MM-DD'. */
export function fromDbDate(date: Date): string {
  return date.toISOString().slice(0, 10);
}
