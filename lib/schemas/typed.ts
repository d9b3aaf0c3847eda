/** What a form sends of a field: left empty it is nothing. */
export const blankIsNull = (value: unknown) => (value === '' || value === undefined ? null : value);

/** A number as it is typed, with a comma or a point; what is none is left to be refused by its schema. */
export const typedNumber = (value: unknown) =>
  typeof value === 'string' && value.trim() !== '' ? Number(value.replace(',', '.')) : value;
