import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const root = new URL('..', import.meta.url);
const { exports: entries } = JSON.parse(readFileSync(new URL('package.json', root), 'utf8')) as {
  exports: Readonly<Record<string, string | { readonly types: string }>>;
};
const files = Object.values(entries).flatMap((entry) =>
  typeof entry === 'string' ? [] : fileURLToPath(new URL(entry.types, root)),
);
const program = ts.createProgram(files, {
  strict: true,
  module: ts.ModuleKind.NodeNext,
  moduleResolution: ts.ModuleResolutionKind.NodeNext,
  target: ts.ScriptTarget.ES2023,
  skipLibCheck: true,
});
const checker = program.getTypeChecker();
const real = (symbol: ts.Symbol): ts.Symbol =>
  symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;

function exportedBy(file: string): Set<ts.Symbol> {
  const source = program.getSourceFile(file);
  const module = source && checker.getSymbolAtLocation(source);
  return new Set(module ? checker.getExportsOfModule(module).map(real) : []);
}

/** Names of our own types in the declarations of a symbol, which someone who uses it would have to write. */
function named(symbol: ts.Symbol): ts.Symbol[] {
  const found: ts.Symbol[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTypeReferenceNode(node) || ts.isExpressionWithTypeArguments(node)) {
      const name = ts.isTypeReferenceNode(node) ? node.typeName : node.expression;
      const target = checker.getSymbolAtLocation(name);
      if (target) found.push(real(target));
    }
    ts.forEachChild(node, visit);
  };
  for (const declaration of symbol.declarations ?? []) {
    // the whole declaration, but not its neighbours: a variable's statement may declare several
    visit(declaration);
  }
  return found;
}

/** Whether a declaration stands in this package and is not a type parameter. */
function ours(symbol: ts.Symbol): boolean {
  const [declaration] = symbol.declarations ?? [];
  if (!declaration || ts.isTypeParameterDeclaration(declaration)) return false;
  const { fileName } = declaration.getSourceFile();
  return fileName.includes('/dist/lib/') && !fileName.includes('/node_modules/');
}

const offered = new Set(files.flatMap((file) => [...exportedBy(file)]));

it('exports, at one entry or another, every type that a signature names', () => {
  expect(offered.size).toBeGreaterThan(100);
  const seen = new Set<ts.Symbol>();
  const missing = new Set<string>();
  const queue = [...offered];
  for (let symbol = queue.pop(); symbol; symbol = queue.pop()) {
    if (seen.has(symbol)) continue;
    seen.add(symbol);
    for (const target of named(symbol).filter(ours)) {
      const from = target.declarations?.[0]?.getSourceFile().fileName.replace(/^.*\/dist\/lib\//, '');
      if (!offered.has(target)) missing.add(`${target.name} of ${from ?? ''}`);
      queue.push(target);
    }
  }
  expect([...missing].sort()).toEqual([]);
});

describe.each(Object.keys(entries).filter((name) => name !== './package.json'))('the entry %s', (name) => {
  it('has declarations', () => {
    const entry = entries[name];
    expect(exportedBy(typeof entry === 'object' ? fileURLToPath(new URL(entry.types, root)) : '').size).toBeGreaterThan(
      0,
    );
  });
});
