import ts from 'typescript';

/** One small wrong change: what stood there, what stands there instead. */
export type Mutant = {
  id: number;
  file: string;
  line: number;
  was: string;
  is: string;
  /** Of a threshold: its id, as `stalled.minDays`. */
  threshold: string | undefined;
};

/** A boundary moved by one, and the opposite, of each comparison. */
const OTHERS: Partial<Record<ts.SyntaxKind, [string, string?]>> = {
  [ts.SyntaxKind.LessThanToken]: ['<=', '>='],
  [ts.SyntaxKind.LessThanEqualsToken]: ['<', '>'],
  [ts.SyntaxKind.GreaterThanToken]: ['>=', '<='],
  [ts.SyntaxKind.GreaterThanEqualsToken]: ['>', '<'],
  [ts.SyntaxKind.EqualsEqualsEqualsToken]: ['!=='],
  [ts.SyntaxKind.ExclamationEqualsEqualsToken]: ['==='],
};
const CALLS: Record<string, string> = { exceeds: 'reaches', reaches: 'exceeds' };

/**
 * The source with every mutant in it, each asleep until `globalThis.mutant` is its number, so that one build serves
 * all of them. Comparisons, `exceeds` and `reaches` are flipped, the values of `threshold(…)` are nudged up and down.
 */
export function mutate(file: string, source: string, firstId: number): { code: string; mutants: Mutant[] } {
  const tree = ts.createSourceFile(file, source, ts.ScriptTarget.Latest, true);
  const mutants: Mutant[] = [];

  const note = (node: ts.Node, is: string): number => {
    const id = firstId + mutants.length;
    const line = tree.getLineAndCharacterOfPosition(node.getStart()).line + 1;
    const owner = node.parent.parent;
    const threshold =
      file.includes('/thresholds/') && ts.isPropertyAssignment(owner) && ts.isStringLiteral(owner.name)
        ? owner.name.text
        : undefined;
    mutants.push({ id, file, line, was: node.getText(), is, threshold });
    return id;
  };
  /** The text of a node with the mutants of its children in it. */
  const inner = (node: ts.Node): string => {
    let text = '';
    let end = node.getFullStart();
    node.forEachChild((child) => {
      text += source.slice(end, child.getFullStart()) + print(child);
      end = child.getEnd();
    });
    return text + source.slice(end, node.getEnd());
  };
  const print = (node: ts.Node): string => {
    if (ts.isTypeNode(node)) return source.slice(node.getFullStart(), node.getEnd());
    if (ts.isBinaryExpression(node)) return comparison(node);
    if (ts.isCallExpression(node) && ts.isIdentifier(node.expression))
      return call(node, node.expression.text);
    return inner(node);
  };
  const comparison = (node: ts.BinaryExpression): string => {
    const others = OTHERS[node.operatorToken.kind];
    if (!others) return inner(node);
    const space = source.slice(node.getFullStart(), node.getStart());
    const [left, right] = [print(node.left), print(node.right)];
    const plain = `${left} ${node.operatorToken.getText()} ${right}`;
    const branches = others.flatMap((other) => {
      if (other === undefined) return [];
      const id = note(node, `${node.left.getText()} ${other} ${node.right.getText()}`);
      return [`globalThis.mutant === ${id} ? (globalThis.tick(), ${left} ${other} ${right}) : `];
    });
    return `${space}(${branches.join('')}${plain})`;
  };
  const call = (node: ts.CallExpression, name: string): string => {
    const space = source.slice(node.getFullStart(), node.getStart());
    const other = CALLS[name];
    if (other) {
      const args = node.arguments.map(print).join(',');
      const ids = [
        `globalThis.mutant === ${note(node, `${other}(…)`)} ? compareParts.${other}(${args}) : `,
        `globalThis.mutant === ${note(node, `!${name}(…)`)} ? !compareParts.${name}(${args}) : `,
      ];
      return `${space}(${ids.join('')}compareParts.${name}(${args}))`;
    }
    const [value, ...rest] = node.arguments;
    if (name !== 'threshold' || !value || !file.includes('/thresholds/')) return inner(node);
    const nudged = ['up', 'down'].map((way) => {
      const id = note(value, `nudged ${way}`);
      return `globalThis.mutant === ${id} ? nudge(${value.getText()}, '${way}') : `;
    });
    return `${space}threshold((${nudged.join('')}${value.getText()}),${rest.map(print).join(',')})`;
  };

  const code = print(tree);
  const head = code.includes('compareParts.')
    ? "import * as compareParts from '#lib/checks/compare.ts';\n"
    : '';
  const tail = code.includes('nudge(')
    ? '\nfunction nudge(value, way) { const by = Number.isInteger(value) ? Math.max(1, Math.round(Math.abs(value) / 10)) : Math.abs(value) / 10; return way === "up" ? value + by : value - by; }\n'
    : '';
  return { code: head + code + tail, mutants };
}
