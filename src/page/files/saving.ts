import { signal } from '@preact/signals';
import { wantedBy } from '../../generators/wanted.js';
import { nameFrom } from '../../recipe/name.js';
import type { Kept, Opened, Save, Saved } from '../../wire.js';
import { ApiWrong, api, bytesOf } from '../api/client.js';
import { notice } from '../state/bench.js';
import { at, clash, drawn, file, set, shipped, text, trouble, unsaved } from '../state/card.js';
import { wordsOf } from './words.js';

/** The card has no file yet and is asked for one; `done` hears the name, or null. */
export const naming = signal<{ readonly offer: string; done(name: string | null): void } | null>(null);

/** Saves the card. True when what is on the card now lies on disk. */
export async function save(): Promise<boolean> {
  if (text.value === '') return false;
  if (!unsaved.value) return true;
  if (clash.value) return false;
  try {
    return file.value.path === null ? await saveNew() : await write(file.value.path, file.value.version);
  } catch (e) {
    notice.value = wordsOf(e);
    return false;
  }
}

/** Saves what is on the card to a file of that name, with the drawings and fonts of the recipe it began from. */
async function saveNew(): Promise<boolean> {
  const path = await named();
  if (path === null) return false;
  const began = shipped.value;
  // A card that began from a recipe of ours points at our schema, which is not beside the maker's file.
  if (typeof at(['$schema']) === 'string') set(['$schema'], undefined);
  if (began !== null) await bring(began, path);
  const saved = await write(path, null);
  if (saved) shipped.value = null;
  return saved;
}

function named(): Promise<string | null> {
  const name = at(['name']);
  const offer = `${nameFrom(typeof name === 'string' ? name : '', 'piece', 'piece')}.json`;
  return new Promise((done) => {
    naming.value = {
      offer,
      done: (name) => {
        naming.value = null;
        done(name);
      },
    };
  });
}

/** Copies the drawings and fonts that the card names from where it began to beside the new file. */
async function bring(began: string, path: string): Promise<void> {
  const recipe = drawn.value?.recipe ?? trouble.value?.recipe;
  if (!recipe) return;
  const { fonts, drawings } = wantedBy(recipe.pattern);
  for (const { name, where } of [...drawings, ...fonts.filter((f) => /[./\\]/.test(f.name))]) {
    const bytes = await bytesOf('/api/asset', { query: { shipped: began, path: name } });
    const kept = await keepBeside(path, name.split('/').at(-1)!, bytes);
    if (kept !== name) set(keysOf(where), kept);
  }
}

/** The keys of a path such as pattern.0.file. */
export function keysOf(where: string): (string | number)[] {
  return where.split('.').map((key) => (/^\d+$/.test(key) ? Number(key) : key));
}

/** Keeps a drawing or font beside a recipe; its path as the recipe writes it. */
export async function keepBeside(of: string, name: string, bytes: BodyInit): Promise<string> {
  const { path } = await api<Kept>('PUT', '/api/beside', { query: { of, name }, bytes });
  return path;
}

async function write(path: string, over: string | null): Promise<boolean> {
  const sent = text.value;
  try {
    const { version } = await api<Saved>('PUT', '/api/recipe', {
      json: { file: path, text: sent, over } satisfies Save,
    });
    file.value = { path, version, saved: sent };
    notice.value = `Saved as ${path}.`;
    return text.value === sent;
  } catch (e) {
    if (!(e instanceof ApiWrong) || e.status !== 409) throw e;
    const there = e.body as Opened;
    if (over === null && file.value.path === null) {
      notice.value = `There is another ${path} already: give the card another name.`;
      return false;
    }
    clash.value = { text: there.text, version: there.version! };
    return false;
  }
}

/** Of two versions the maker keeps the one on the card: the next save replaces the other. */
export function keepMine(): void {
  const other = clash.value;
  if (!other) return;
  file.value = { ...file.value, version: other.version, saved: other.text };
  clash.value = null;
}
