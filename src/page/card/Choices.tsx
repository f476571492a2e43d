import { book, settle } from '../state/card.js';
import type { Item } from './items.js';
import { put, standing, textWith } from './on-card.js';
import { type Choice, Tiles } from './Tiles.js';

/** A text: to type, or a font to choose. */
export function OfText({ item }: { item: Item }) {
  const p = item.parameter;
  if (p.kind !== 'text') return null;
  const { held: now } = standing(item);
  const value = String(now ?? '');
  const common = {
    class: 'typed text',
    spellcheck: false,
    autocomplete: 'off',
    maxLength: p.maxLength,
    'aria-label': p.meaning,
    onInput: (e: { currentTarget: { value: string } }) => put(item, e.currentTarget.value, true),
    onChange: settle,
  };
  const fonts = item.parameter.name === 'font' ? (book.value?.fonts ?? []) : [];
  return (
    <>
      {p.lines ? (
        <textarea {...common} rows={2} value={value} />
      ) : (
        <input {...common} type="text" value={value} />
      )}
      {fonts.length > 0 ? (
        <Tiles
          label="Font"
          choices={fonts.map((f) => ({ value: f.name, title: f.title, meaning: f.style }))}
          chosen={value}
          drawn={(name) => [textWith(item, name)]}
          onChoose={(name) => put(item, name)}
        />
      ) : null}
    </>
  );
}

/** One of several, or yes and no. */
export function OfChoice({ item }: { item: Item }) {
  const p = item.parameter;
  const { held: now } = standing(item);
  const figure = /^(outline|pattern)\b/.test(item.key);
  if (p.kind === 'flag') {
    const words = p.words ?? ['yes', 'no'];
    const choices = [true, false].map((v, k) => ({ value: String(v), title: words[k]!, meaning: '' }));
    return (
      <Tiles
        label={p.meaning}
        choices={choices}
        chosen={String(now)}
        drawn={figure ? (v) => [textWith(item, v === 'true')] : null}
        onChoose={(v) => put(item, v === 'true')}
      />
    );
  }
  if (p.kind !== 'choice') return null;
  const wood = /^woods\./.test(item.key);
  const colour = (name: string): string | undefined =>
    wood ? book.value?.woods.find((w) => w.name === name)?.colour : undefined;
  const choices: Choice[] = p.options.map(({ value, meaning }) => {
    const c = colour(value);
    return { value, title: value.replaceAll('-', ' '), meaning, ...(c === undefined ? {} : { colour: c }) };
  });
  return (
    <Tiles
      label={p.meaning}
      choices={choices}
      chosen={String(now)}
      drawn={figure ? (v) => [textWith(item, v)] : null}
      onChoose={(v) => put(item, v)}
    />
  );
}
