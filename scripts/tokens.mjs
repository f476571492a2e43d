import { createScanner, SyntaxKind } from 'typescript/unstable/ast';

/**
 * @typedef {object} Token
 * @property {'name' | 'string' | 'number' | 'mark'} kind
 * @property {string} text as written; for a string, its value
 * @property {number} line from 1
 */

/** Marks after which a slash divides; after anything else it starts a regular expression. */
const ENDS_VALUE = new Set([')', ']', '}']);
/** Names after which a slash starts a regular expression. */
const WANTS_VALUE = new Set([
  'return',
  'typeof',
  'case',
  'in',
  'of',
  'void',
  'delete',
  'throw',
  'else',
  'do',
]);

/**
 * The tokens of a TypeScript source, comments left out. The scanner alone cannot tell a division from a regular
 * expression, nor a `}` that ends a template's hole from a closing brace, so both are told by what came before.
 * @param {string} source
 * @returns {Token[]}
 */
export function tokens(source) {
  const scanner = createScanner(true, undefined, source);
  /** @type {Token[]} */
  const out = [];
  /** Braces open since each template hole began. */
  const holes = [];
  let line = 1;
  let counted = 0;
  for (;;) {
    let kind = scanner.scan();
    const last = out.at(-1);
    if (kind === SyntaxKind.SlashToken || kind === SyntaxKind.SlashEqualsToken) {
      const divides =
        last &&
        (last.kind === 'mark'
          ? ENDS_VALUE.has(last.text)
          : last.kind !== 'name' || !WANTS_VALUE.has(last.text));
      if (!divides) kind = scanner.reScanSlashToken();
    } else if (kind === SyntaxKind.OpenBraceToken && holes.length > 0) {
      holes[holes.length - 1]++;
    } else if (kind === SyntaxKind.CloseBraceToken && holes.length > 0) {
      if (holes.at(-1) > 0) holes[holes.length - 1]--;
      else {
        kind = scanner.reScanTemplateToken(false);
        if (kind === SyntaxKind.TemplateTail) holes.pop();
      }
    }
    if (kind === SyntaxKind.TemplateHead) holes.push(0);
    if (kind === SyntaxKind.EndOfFile) return out;

    const start = scanner.getTokenStart();
    for (; counted < start; counted++) if (source[counted] === '\n') line++;
    out.push({ ...described(kind, scanner), line });
  }
}

function described(kind, scanner) {
  switch (kind) {
    case SyntaxKind.StringLiteral:
    case SyntaxKind.NoSubstitutionTemplateLiteral:
      return { kind: 'string', text: scanner.getTokenValue() };
    case SyntaxKind.TemplateHead:
    case SyntaxKind.TemplateMiddle:
    case SyntaxKind.TemplateTail:
    case SyntaxKind.RegularExpressionLiteral:
      return { kind: 'string', text: scanner.getTokenText() };
    case SyntaxKind.NumericLiteral:
    case SyntaxKind.BigIntLiteral:
      return { kind: 'number', text: scanner.getTokenText() };
    default: {
      const text = scanner.getTokenText();
      return { kind: /^[\p{ID_Start}$_#]/u.test(text) ? 'name' : 'mark', text };
    }
  }
}
