import { shown, Unreadable } from './place.js';

/** One start, end or empty tag of an XML file. */
export interface Tag {
  readonly name: string;
  readonly kind: 'start' | 'end' | 'empty';
  /** Where it stands in the file. */
  readonly offset: number;
  readonly attributes: ReadonlyMap<string, Attribute>;
}

export interface Attribute {
  readonly value: string;
  /** Where the value begins in the file. */
  readonly offset: number;
}

const NAME = /[A-Za-z_][\w:.-]*/y;
const BLANKS = /[\s]*/y;

/**
 * The tags of an XML file in order. Enough of XML 1.0 for drawings: comments, CDATA, processing instructions and
 * a document type without inner subset are stepped over, text between tags is ignored, entities are left as
 * written. Unbalanced tags, repeated attributes and anything after the root are refused. Linear time.
 */
export function* tags(text: string): Generator<Tag> {
  const open: string[] = [];
  let roots = 0;
  let at = text.indexOf('<');
  for (; at >= 0; at = text.indexOf('<', at)) {
    if (text.startsWith('<!--', at)) at = past(text, at, '-->', 'a comment');
    else if (text.startsWith('<![CDATA[', at)) at = past(text, at, ']]>', 'a CDATA section');
    else if (text.startsWith('<?', at)) at = past(text, at, '?>', 'a processing instruction');
    else if (text.startsWith('<!', at)) at = past(text, at, '>', 'a declaration');
    else if (text.startsWith('</', at)) {
      const name = match(text, NAME, at + 2);
      const end = at + 2 + name.length + match(text, BLANKS, at + 2 + name.length).length;
      if (text[end] !== '>' || open.pop() !== name) {
        throw new Unreadable(text, at, `</${name}> closes nothing that is open here`);
      }
      yield { name, kind: 'end', offset: at, attributes: new Map() };
      at = end + 1;
    } else {
      if (open.length === 0 && roots++ > 0) throw new Unreadable(text, at, 'a second root element');
      const [tag, end] = startTag(text, at);
      if (tag.kind === 'start') open.push(tag.name);
      yield tag;
      at = end;
    }
  }
  if (open.length > 0) throw new Unreadable(text, text.length, `<${open.pop()}> is never closed`);
}

function past(text: string, from: number, close: string, what: string): number {
  const end = text.indexOf(close, from);
  if (end < 0) throw new Unreadable(text, from, `${what} is never closed`);
  return end + close.length;
}

function match(text: string, pattern: RegExp, at: number): string {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0] ?? '';
}

function startTag(text: string, from: number): [Tag, number] {
  const name = match(text, NAME, from + 1);
  if (name === '') throw new Unreadable(text, from, 'expected the name of an element after "<"');
  const attributes = new Map<string, Attribute>();
  let at = from + 1 + name.length;
  for (;;) {
    at += match(text, BLANKS, at).length;
    if (text[at] === '>') return [{ name, kind: 'start', offset: from, attributes }, at + 1];
    if (text.startsWith('/>', at)) return [{ name, kind: 'empty', offset: from, attributes }, at + 2];
    const key = match(text, NAME, at);
    let value = at + key.length;
    value += match(text, BLANKS, value).length;
    if (key === '' || text[value] !== '=') {
      throw new Unreadable(
        text,
        at,
        `expected an attribute or ">" in <${name}>, found ${shown(text.slice(at, at + 30))}`,
      );
    }
    value += 1 + match(text, BLANKS, value + 1).length;
    const quote = text[value];
    const end = quote === '"' || quote === "'" ? text.indexOf(quote, value + 1) : -1;
    if (end < 0) throw new Unreadable(text, value, `the value of ${key} has no closing quote`);
    if (attributes.has(key)) throw new Unreadable(text, at, `${key} is given twice in <${name}>`);
    attributes.set(key, { value: text.slice(value + 1, end), offset: value + 1 });
    at = end + 1;
  }
}
