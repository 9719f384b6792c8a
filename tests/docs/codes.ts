/**
 * Every diagnostic code that the source can make, found by the TypeScript parser, not by a list kept beside it.
 *
 * A code is a string literal that is the value of a property `code`, of a constant `code` or of the table `CODES`, or that
 * is passed where a function of the same file (or a method by that name) has a parameter called `code`. A template
 * `${prefix}-${code}` stands for every value its prefix's type allows.
 */
import ts from "typescript";
import { readSources, type SourceModule } from "../architecture/sources.js";

/** Codes by name, each with the files below `src` that make it; both sorted. */
export function codesOf(modules: readonly SourceModule[] = readSources()): Map<string, string[]> {
  // Node's own error codes are read in the command line, which makes no diagnostics.
  const files = modules
    .filter(({ path }) => !path.startsWith("cli/"))
    .map(({ path, text }) => ({
      path,
      file: ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true),
    }));
  const methods = new Map(files.flatMap(({ file }) => codeParameters(file, ts.isMethodSignature)));
  const found = new Map<string, Set<string>>();
  for (const { path, file } of files) {
    const calls = new Map([...methods, ...codeParameters(file, isFunction)]);
    for (const code of literals(file, calls)) found.set(code, (found.get(code) ?? new Set()).add(path));
  }
  return new Map([...found].sort(([a], [b]) => (a < b ? -1 : 1)).map(([code, at]) => [code, [...at].sort()]));
}

const isFunction = (node: ts.Node): node is ts.SignatureDeclaration =>
  ts.isFunctionDeclaration(node) || ts.isArrowFunction(node);

/** Functions of a file that take a parameter `code`: their name, its place, and the prefixes it gets. */
function codeParameters(
  file: ts.SourceFile,
  wanted: (node: ts.Node) => node is ts.SignatureDeclaration,
): [string, { place: number; prefixes: string[] }][] {
  const out: [string, { place: number; prefixes: string[] }][] = [];
  visit(file, (node) => {
    if (!wanted(node)) return;
    const name = node.name ?? (ts.isVariableDeclaration(node.parent) ? node.parent.name : undefined);
    const place = node.parameters.findIndex((p) => p.name.getText(file) === "code");
    if (name && place >= 0) out.push([name.getText(file), { place, prefixes: prefixesOf(node, file) }]);
  });
  return out;
}

/** The literal types of `prefix` where a function writes `${prefix}-${code}`; one empty prefix elsewhere. */
function prefixesOf(node: ts.SignatureDeclaration, file: ts.SourceFile): string[] {
  if (!/`\$\{prefix\}-\$\{code\}`/.test(node.getText(file))) return [""];
  const types = /\bprefix: ((?:"\w+"(?: \| )?)+)/.exec(file.text)?.[1] ?? "";
  return [...types.matchAll(/"(\w+)"/g)].map(([, word]) => `${word}-`);
}

function literals(
  file: ts.SourceFile,
  calls: ReadonlyMap<string, { place: number; prefixes: string[] }>,
): string[] {
  const out: string[] = [];
  const take = (node: ts.Node) => {
    visit(node, (inner) => {
      const value = ts.isStringLiteral(inner) && !isComparison(inner.parent);
      if (value) out.push(inner.text);
    });
  };
  visit(file, (node) => {
    if (ts.isPropertyAssignment(node) && node.name.getText(file) === "code") take(node.initializer);
    if (ts.isVariableDeclaration(node) && /^codes?$/i.test(node.name.getText(file)) && node.initializer) {
      take(node.initializer);
    }
    if (!ts.isCallExpression(node)) return;
    const callee = node.expression.getText(file).split(".").at(-1) ?? "";
    const known = calls.get(callee);
    const given = known && node.arguments[known.place];
    if (known && given && ts.isStringLiteral(given)) {
      out.push(...known.prefixes.map((prefix) => `${prefix}${given.text}`));
    }
  });
  return out;
}

const isComparison = (node: ts.Node) =>
  ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.EqualsEqualsEqualsToken;

function visit(node: ts.Node, look: (node: ts.Node) => void): void {
  look(node);
  ts.forEachChild(node, (child) => visit(child, look));
}
