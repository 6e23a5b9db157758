/**
 * @typedef {object} Example
 * @property {string} name what it shows: the declaration that its docstring stands before
 * @property {number} line where it begins in its file, from 1
 * @property {string} code
 */

const docstring = /\/\*\*[\s\S]*?\*\//g;
const declaration =
  /^\s*(?:export\s+)?(?:default\s+)?(?:async\s+)?(?:function\*?|const|class|interface|type)\s+(\w+)/;

/** Every `### Example` of every docstring in a source text. @param {string} source @returns {Example[]} */
export function findExamples(source) {
  return [...source.matchAll(docstring)].flatMap((match) => {
    const after = source.slice(match.index + match[0].length);
    const name = declaration.exec(after)?.[1] ?? "the module";
    const firstLine = source.slice(0, match.index).split("\n").length;
    return codeBlocks(match[0]).map(({ offset, code }) => ({ name, line: firstLine + offset, code }));
  });
}

/** The indented lines under each heading; a line that is not indented ends the example. @param {string} comment */
function codeBlocks(comment) {
  /** @type {{ offset: number, code: string }[]} */
  const blocks = [];
  /** @type {{ offset: number, code: string } | null} */
  let open = null;
  for (const [offset, raw] of comment.split("\n").entries()) {
    const text = raw.replace(/^\s*\*(?!\/) ?/, "");
    if (/^### Example\s*$/.test(text)) {
      open = { offset, code: "" };
      blocks.push(open);
    } else if (/^(\s{2,}\S|\s*$)/.test(text) && !/^\s*\*\//.test(text)) {
      if (open !== null) open.code += `${text}\n`;
    } else {
      open = null;
    }
  }
  return blocks;
}
