import { MAX_NAME } from './fields.js';

/** Names that Windows keeps for devices, whatever follows a dot. Source: Microsoft, "Naming Files, Paths, and Namespaces". */
const RESERVED = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])$/i;

/** What is wrong with a piece's name, or null. It becomes a folder name, so it must be safe on every system. */
export function nameFault(name: string): string | null {
  if (!/^[A-Za-z0-9-]+$/.test(name)) return `may hold letters, digits and hyphens only${suggested(name)}`;
  if (name.startsWith('-') || name.endsWith('-')) return 'may not start or end with a hyphen';
  if (RESERVED.test(name))
    return `${JSON.stringify(name)} is a name Windows keeps for a device: choose another`;
  return null;
}

/** Names that commands make up are no longer than this. */
const MADE_UP = 40;

/**
 * A name for a piece from any text: small letters, digits and hyphens. `other` where nothing of the text is left;
 * where the name is one that Windows keeps, `-kind` is added.
 */
export function nameFrom(text: string, other: string, kind: string): string {
  const plain = plainText(text).toLowerCase().slice(0, MADE_UP).replace(/-+$/, '');
  if (plain === '') return other;
  return nameFault(plain) === null ? plain : `${plain}-${kind}`;
}

function suggested(name: string): string {
  const plain = plainText(name).slice(0, MAX_NAME).replace(/-+$/, '');
  return plain === '' ? '' : `: try ${JSON.stringify(plain)}`;
}

/** Letters without their marks, digits, and hyphens between for all else. */
function plainText(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{Mn}/gu, '')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
}
