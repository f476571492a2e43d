import { SaxesParser } from 'saxes';
import { BadInput, Refusal } from '../../schema/fault.js';
import { shortened } from './shortened.js';

/** An element of a drawing, by its local name. Elements of other namespaces are left out, with all they hold. */
export interface SvgElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly parent: SvgElement | null;
  readonly children: SvgElement[];
  /** The line it starts on, from 1. */
  readonly line: number;
  /** The text straight in it. */
  text: string;
}

/** Bounds that keep a hostile file from taking time and memory; far above any drawing that a cutter could follow. */
export const MOST_BYTES = 2_000_000;
const MOST_ELEMENTS = 50_000;
const MOST_DEPTH = 200;

const OTHER_ENTITY = "an entity other than XML's own five stands in it; write the character itself";

/**
 * Reads XML into a tree. Nothing outside the text is ever read, and no entity but XML's own five is known.
 * Throws BadInput with the line for text that is no XML, Refusal for too much of it.
 */
export function readXml(text: string, source: string): SvgElement {
  if (text.length > MOST_BYTES)
    throw new Refusal(
      'too-large',
      `${source}: holds ${(text.length / 1e6).toFixed(1)} MB; a drawing is ${MOST_BYTES / 1e6} MB at most: make it simpler`,
    );
  // Names keep their prefixes: files that leave out a namespace's declaration are common, and harmless.
  const parser = new SaxesParser({ position: true });
  const fail = (message: string): never => {
    throw new BadInput([{ source: `${source}:${parser.line}`, where: '', message }]);
  };
  let root: SvgElement | null = null;
  const open: (SvgElement | null)[] = [];
  let elements = 0;
  let startLine = 1;
  parser.on('error', ({ message }) => {
    const said = message.replace(/^(\d+:)+\d*:? */, '').replace(/\S{41,}/g, shortened);
    fail(`is no sound XML: ${/^undefined entity/.test(said) ? OTHER_ENTITY : said}`);
  });
  parser.on('doctype', (doctype) => {
    if (/<!(ENTITY|ATTLIST|ELEMENT)|%/i.test(doctype))
      fail(
        'declares entities in its DOCTYPE, which are not read; take the DOCTYPE out or export as plain SVG',
      );
  });
  parser.on('opentagstart', () => {
    startLine = parser.line;
  });
  parser.on('opentag', ({ name, attributes }) => {
    if (++elements > MOST_ELEMENTS)
      throw new Refusal('too-large', `${source}: holds more than ${MOST_ELEMENTS} elements; make it simpler`);
    if (open.length >= MOST_DEPTH) fail(`is nested deeper than ${MOST_DEPTH} elements; ungroup it`);
    const parent = open[open.length - 1] ?? null;
    const local = name.startsWith('svg:') ? name.slice(4) : name;
    if (local.includes(':') || (open.length > 0 && !parent)) {
      if (open.length === 0) fail(`starts with <${shortened(name)}>, not with <svg>; give an SVG file`);
      open.push(null);
      return;
    }
    const element: SvgElement = {
      name: local,
      attributes: new Map(Object.entries(attributes)),
      parent,
      children: [],
      line: startLine,
      text: '',
    };
    parent?.children.push(element);
    root ??= element;
    open.push(element);
  });
  const addText = (part: string): void => {
    const element = open[open.length - 1];
    if (element?.name === 'style') element.text += part;
  };
  parser.on('text', addText);
  parser.on('cdata', addText);
  parser.on('closetag', () => {
    open.pop();
  });
  parser.write(text).close();
  const made = root as SvgElement | null;
  if (made?.name !== 'svg')
    return fail(`starts with <${shortened(made?.name ?? '')}>, not with <svg>; give an SVG file`);
  return made;
}
