/** A value as JSON, piece by piece: an object's own lists go out item by item, so that no long text is made whole. */
export function* jsonPieces(value: Readonly<Record<string, unknown>>): Generator<string> {
  yield '{\n';
  let first = true;
  for (const [name, part] of Object.entries(value)) {
    if (part === undefined) continue;
    yield `${first ? '' : ',\n'} ${JSON.stringify(name)}: `;
    first = false;
    if (Array.isArray(part)) yield* listPieces(part);
    else yield JSON.stringify(part);
  }
  yield '\n}\n';
}

function* listPieces(items: readonly unknown[]): Generator<string> {
  yield '[';
  for (const [at, item] of items.entries()) yield `${at === 0 ? '\n  ' : ',\n  '}${JSON.stringify(item)}`;
  yield items.length > 0 ? '\n ]' : ']';
}
