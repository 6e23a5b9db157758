import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import ts from "typescript";

/**
 * @typedef {object} Export
 * @property {string} name
 * @property {"value" | "type"} kind
 * @property {string} file where it is declared
 * @property {boolean} isFunction
 * @property {string} docstring empty when it has none
 */

/** Everything that a package's index offers, followed to where it is declared. @param {string} file @returns {Export[]} */
export function indexExports(file) {
  if (!existsSync(file)) return [];
  const tree = ts.createSourceFile(file, readFileSync(file, "utf8"), ts.ScriptTarget.Latest, true);
  return tree.statements.flatMap((statement) =>
    ts.isExportDeclaration(statement) ? passedOn(file, statement) : declared(file, statement),
  );
}

/** `export { a, type B } from "./x.ts"` and `export * from "./x.ts"`. @param {string} file @param {ts.ExportDeclaration} statement @returns {Export[]} */
function passedOn(file, statement) {
  const from = statement.moduleSpecifier;
  const there =
    from !== undefined && ts.isStringLiteral(from) && from.text.startsWith(".")
      ? indexExports(join(dirname(file), from.text))
      : [];
  const clause = statement.exportClause;
  if (clause === undefined) return there;
  if (!ts.isNamedExports(clause)) return [];
  return clause.elements.map((element) => {
    const original = (element.propertyName ?? element.name).text;
    const found = there.find(({ name }) => name === original);
    const isType = statement.isTypeOnly || element.isTypeOnly;
    return {
      file,
      isFunction: false,
      docstring: "",
      ...found,
      name: element.name.text,
      kind: isType ? "type" : "value",
    };
  });
}

/** @param {string} file @param {ts.Statement} statement @returns {Export[]} */
function declared(file, statement) {
  const isExported =
    ts.canHaveModifiers(statement) &&
    ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword);
  if (!isExported) return [];
  const docstring = ts
    .getJSDocCommentsAndTags(statement)
    .map((node) => node.getText())
    .join("\n");
  /** @param {ts.Node | undefined} name @param {Export["kind"]} kind @param {boolean} isFunction @returns {Export[]} */
  const one = (name, kind, isFunction) =>
    name === undefined ? [] : [{ name: name.getText(), kind, file, isFunction, docstring }];
  if (ts.isFunctionDeclaration(statement)) return one(statement.name, "value", true);
  if (ts.isClassDeclaration(statement)) return one(statement.name, "value", false);
  if (ts.isInterfaceDeclaration(statement)) return one(statement.name, "type", false);
  if (ts.isTypeAliasDeclaration(statement)) return one(statement.name, "type", false);
  if (!ts.isVariableStatement(statement)) return [];
  return statement.declarationList.declarations.flatMap(({ name, initializer }) =>
    one(name, "value", initializer !== undefined && ts.isArrowFunction(initializer)),
  );
}
