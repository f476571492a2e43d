import { escapeText } from './format.js';
import { SHEET_STYLE } from './sheet-style.js';

/** One self-contained page, no scripts, nothing fetched. `kind` follows the name in the title; `body` is HTML. */
export function sheetPage(name: string, kind: string, style: string, body: readonly string[]): string {
  return [
    '<!DOCTYPE html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escapeText(name)}: ${kind}</title>`,
    `<style>\n${SHEET_STYLE}${style}\n</style>`,
    '</head>',
    '<body>',
    `<h1>${escapeText(name)}</h1>`,
    ...body,
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

/** A titled part of the page; with `keep` it is not torn apart between two sheets of paper. */
export function block(title: string, body: string, keep = false): string {
  return `<section${keep ? ' class="keep"' : ''}><h2>${title}</h2>\n${body}\n</section>`;
}

/** An SVG inside HTML needs no namespace, and without it the page holds no address at all. */
export function inline(svg: string): string {
  return svg.replace(/ xmlns="[^"]*"/, '');
}
