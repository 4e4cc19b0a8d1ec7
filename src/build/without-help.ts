/**
 * The script that Excel loads computes; what is told of a function stands in functions.json and in the pane. So the texts
 * that only help shows are left out of that script, where every user waits for it.
 */
import path from 'node:path';
import ts from 'typescript';

/** What makes an entry of the catalogue, and what of it is help. */
const ENTRY_MAKERS: ReadonlySet<string> = new Set(['perCell', 'perList', 'overList', 'tableOf']);
const HELP: ReadonlySet<string> = new Set(['topic', 'summary', 'gives', 'example', 'source']);
/** What makes a parameter: its name first, then its meaning. */
const PARAMETER_MAKER = /Parameter$|^nameWord$/;

const folder = (name: string) => path.join('src', 'functions', name) + path.sep;

function isHelp(property: ts.ObjectLiteralElementLike): boolean {
  return (
    ts.isPropertyAssignment(property) &&
    ts.isIdentifier(property.name) &&
    HELP.has(property.name.text)
  );
}

/** The arguments of a call without what is help; undefined where the call makes nothing that has help. */
function argumentsWithoutHelp(
  { expression, arguments: given }: ts.CallExpression,
  factory: ts.NodeFactory,
): readonly ts.Expression[] | undefined {
  if (!ts.isIdentifier(expression)) return undefined;
  if (PARAMETER_MAKER.test(expression.text)) {
    return given.map((argument, at) =>
      at === 1 && ts.isStringLiteral(argument) ? factory.createStringLiteral('') : argument,
    );
  }
  if (!ENTRY_MAKERS.has(expression.text)) return undefined;
  return given.map((argument) =>
    ts.isObjectLiteralExpression(argument)
      ? factory.updateObjectLiteralExpression(
          argument,
          argument.properties.filter((property) => !isHelp(property)),
        )
      : argument,
  );
}

/** Leaves the help out of a file of the catalogue or of the parameters; any other file stays as it is. */
export const withoutHelp: ts.TransformerFactory<ts.SourceFile> = (context) => (file) => {
  const name = path.normalize(file.fileName);
  if (!name.includes(folder('catalogue')) && !name.includes(folder('parameters'))) return file;
  const { factory } = context;
  const visit = (node: ts.Node): ts.Node => {
    const kept = ts.isCallExpression(node) ? argumentsWithoutHelp(node, factory) : undefined;
    if (!ts.isCallExpression(node) || kept === undefined) {
      return ts.visitEachChild(node, visit, context);
    }
    const call = factory.updateCallExpression(node, node.expression, node.typeArguments, kept);
    return ts.visitEachChild(call, visit, context);
  };
  return ts.visitEachChild(file, visit, context);
};
