type Plain = string | number | boolean | null;
/** A place in `nodes`. */
type Ref = number;
/** A plain value, or a list (-1) or an object (its place in `shapes`) of the places of what it holds. */
type Node = Plain | [kind: number, ...held: Ref[]];
declare const content: unique symbol;

/** Plain data in which every equal value stands once; `Content` is what comes out of it again. */
export type Packed<Content> = { shapes: string[][]; nodes: Node[]; root: Ref; [content]?: Content };

const LIST = -1;

/**
 * Plain data (what JSON can say) made small for the way to the browser: names of fields once a shape, equal values once
 * altogether. A history of check-ins, most of whose sets are alike, comes to about a tenth. Fields that are undefined
 * are left out, as JSON does.
 */
export function pack<Content extends object>(value: Content): Packed<Content> {
  const shapes = numbered<string[]>();
  const nodes = numbered<Node>();
  const put = (one: unknown): Ref => {
    if (Array.isArray(one)) return nodes.put([LIST, ...one.map(put)]);
    if (typeof one !== 'object' || one === null) return nodes.put(one as Plain);
    const fields = Object.entries(one).filter(([, held]) => held !== undefined);
    const shape = shapes.put(fields.map(([name]) => name));
    return nodes.put([shape, ...fields.map(([, held]) => put(held))]);
  };
  const root = put(value);
  return { shapes: shapes.all, nodes: nodes.all, root };
}

/** What was packed, as new objects: none is shared. */
export function unpack<Content>({ shapes, nodes, root }: Packed<Content>): Content {
  const take = (ref: Ref): unknown => {
    const node = nodes[ref];
    if (!Array.isArray(node)) return node;
    const [kind, ...held] = node;
    if (kind === LIST) return held.map(take);
    const names = shapes[kind] ?? [];
    return Object.fromEntries(held.map((one, index) => [names[index], take(one)]));
  };
  return take(root) as Content;
}

/** A list in which equal values have one place. */
function numbered<Value>() {
  const all: Value[] = [];
  const places = new Map<string, number>();
  const put = (value: Value): number => {
    const key = JSON.stringify(value);
    const known = places.get(key);
    if (known !== undefined) return known;
    places.set(key, all.length);
    return all.push(value) - 1;
  };
  return { all, put };
}
