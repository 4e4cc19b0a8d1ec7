/** The faults that could be made in a file of TypeScript: found in its syntax tree, each a replaced piece of text. */
import ts from 'typescript';
import { changedNumber } from './changed-number';
import type { Mutant } from './mutant';

/** Each operator, and what is taken for it: limits moved by one, and turned over. */
const OPERATORS: Readonly<Record<string, readonly string[]>> = {
  '<': ['<=', '>='],
  '<=': ['<', '>'],
  '>': ['>=', '<='],
  '>=': ['>', '<'],
  '===': ['!=='],
  '!==': ['==='],
  '+': ['-'],
  '-': ['+'],
  '*': ['/'],
  '/': ['*'],
  '%': ['*'],
  '**': ['*'],
  '&&': ['||'],
  '||': ['&&'],
  '??': ['&&'],
  '+=': ['-='],
  '-=': ['+='],
  '*=': ['/='],
  '/=': ['*='],
  '??=': ['&&='],
  '||=': ['&&='],
  '&&=': ['||='],
};

const METHODS = new Map(
  Object.entries({
    some: 'every',
    every: 'some',
    min: 'max',
    max: 'min',
    floor: 'ceil',
    ceil: 'floor',
    round: 'floor',
    startsWith: 'endsWith',
    endsWith: 'startsWith',
    toUpperCase: 'toLowerCase',
    toLowerCase: 'toUpperCase',
    find: 'findLast',
    findLast: 'find',
    findIndex: 'findLastIndex',
    findLastIndex: 'findIndex',
    indexOf: 'lastIndexOf',
    lastIndexOf: 'indexOf',
  }),
);

/** Steps of a chain that can be left out: what they take from stays. */
const LEFT_OUT = new Set([
  ...['filter', 'slice', 'sort', 'toSorted', 'reverse', 'toReversed', 'trim', 'trimStart'],
  ...['trimEnd', 'normalize', 'replace', 'replaceAll', 'concat'],
]);

const isTextSum = (node: ts.Node): boolean =>
  ts.isStringLiteralLike(node) ||
  ts.isTemplateExpression(node) ||
  (ts.isBinaryExpression(node) && (isTextSum(node.left) || isTextSum(node.right)));

/** Texts that are values, not names of files, members or types. */
function isValueText(node: ts.StringLiteralLike): boolean {
  const { parent } = node;
  return !(
    ts.isImportDeclaration(parent) ||
    ts.isExportDeclaration(parent) ||
    ts.isLiteralTypeNode(parent) ||
    (ts.isPropertyAssignment(parent) && parent.name === node) ||
    ts.isElementAccessExpression(parent)
  );
}

/** Patterns with an anchor, a repetition or a choice taken out or turned. */
function patternsNear(pattern: string): string[] {
  const near: string[] = [];
  for (let at = 1; at < pattern.lastIndexOf('/'); at++) {
    const mark = pattern[at]!;
    if (mark === '\\') {
      const next = pattern[at + 1]!;
      const turned = { d: 'D', D: 'd', s: 'S', S: 's', w: 'W', W: 'w' }[next];
      if (turned !== undefined)
        near.push(pattern.slice(0, at + 1) + turned + pattern.slice(at + 2));
      at++;
    } else if ((mark === '^' && pattern[at - 1] !== '[') || mark === '$') {
      near.push(pattern.slice(0, at) + pattern.slice(at + 1));
    } else if (mark === '*' || (mark === '?' && pattern[at - 1] !== '(')) {
      near.push(pattern.slice(0, at) + (mark === '*' ? '+' : '') + pattern.slice(at + 1));
    }
  }
  return near;
}

const isTypeOnly = (node: ts.Node) =>
  ts.isTypeNode(node) ||
  ts.isInterfaceDeclaration(node) ||
  ts.isTypeAliasDeclaration(node) ||
  ts.isImportDeclaration(node);

export function codeMutants(file: string, source: string): Mutant[] {
  const tree = ts.createSourceFile(file, source, ts.ScriptTarget.ES2022, true);
  const mutants: Mutant[] = [];
  const add = (node: ts.Node, text: string, kind: string) =>
    mutants.push({ file, start: node.getStart(tree), end: node.getEnd(), text, kind });
  const textOf = (node: ts.Node) => node.getText(tree);

  const condition = (node: ts.Expression) => {
    for (const said of ['true', 'false']) {
      if (textOf(node) !== said) add(node, said, 'condition');
    }
  };

  const visit = (node: ts.Node): void => {
    // `as const` and the like hold a type beside a value.
    if (isTypeOnly(node)) return;
    if (ts.isBinaryExpression(node)) {
      const { operatorToken } = node;
      const isOfTexts = operatorToken.kind === ts.SyntaxKind.PlusToken && isTextSum(node);
      for (const other of isOfTexts ? [] : (OPERATORS[textOf(operatorToken)] ?? [])) {
        add(operatorToken, other, 'operator');
      }
    } else if (ts.isPrefixUnaryExpression(node)) {
      if (node.operator === ts.SyntaxKind.ExclamationToken) {
        add(node, textOf(node.operand), 'negation');
      } else if (node.operator === ts.SyntaxKind.MinusToken) {
        add(node, textOf(node.operand), 'sign');
      }
    } else if (ts.isPostfixUnaryExpression(node)) {
      const isUp = node.operator === ts.SyntaxKind.PlusPlusToken;
      add(node, `${textOf(node.operand)}${isUp ? '--' : '++'}`, 'operator');
    } else if (ts.isConditionalExpression(node)) {
      condition(node.condition);
    } else if (ts.isIfStatement(node)) {
      condition(node.expression);
    } else if (ts.isWhileStatement(node) || ts.isDoStatement(node)) {
      if (node.expression.kind !== ts.SyntaxKind.TrueKeyword) {
        add(node.expression, 'false', 'condition');
      }
    } else if (ts.isNumericLiteral(node)) {
      if (!ts.isPropertyAssignment(node.parent) || node.parent.name !== node) {
        add(node, changedNumber(textOf(node)), 'number');
      }
    } else if (node.kind === ts.SyntaxKind.TrueKeyword) {
      add(node, 'false', 'truth');
    } else if (node.kind === ts.SyntaxKind.FalseKeyword) {
      add(node, 'true', 'truth');
    } else if (ts.isStringLiteralLike(node)) {
      if (isValueText(node)) add(node, node.text === '' ? "'?'" : "''", 'text');
    } else if (ts.isTemplateExpression(node)) {
      add(node, "''", 'text');
    } else if (ts.isRegularExpressionLiteral(node)) {
      for (const other of patternsNear(textOf(node))) add(node, other, 'pattern');
    } else if (ts.isArrayLiteralExpression(node)) {
      if (node.elements.length > 0) add(node, '[]', 'list');
    } else if (ts.isReturnStatement(node)) {
      const { expression } = node;
      if (expression !== undefined && textOf(expression) !== 'undefined') {
        add(expression, 'undefined', 'returned');
      }
    } else if (ts.isExpressionStatement(node)) {
      add(node, ';', 'statement');
    } else if (ts.isContinueStatement(node) || ts.isBreakStatement(node)) {
      if (!ts.isCaseOrDefaultClause(node.parent)) add(node, ';', 'statement');
    } else if (ts.isPropertyAccessExpression(node) || ts.isElementAccessExpression(node)) {
      if (node.questionDotToken !== undefined) {
        const isMember = ts.isPropertyAccessExpression(node);
        add(node.questionDotToken, isMember ? '.' : '', 'optional');
      }
    } else if (ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression)) {
      const { name, expression } = node.expression;
      const other = METHODS.get(name.text);
      if (other !== undefined) add(name, other, 'method');
      if (LEFT_OUT.has(name.text)) add(node, textOf(expression), 'method');
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return mutants;
}
