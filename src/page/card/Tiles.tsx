import { useEffect, useRef, useState } from 'preact/hooks';
import { Coloured, Stamp } from '../drawing/Small.js';
import type { Figure } from '../worker/protocol.js';
import { wish } from './pictures.js';

/** One thing to choose. */
export interface Choice {
  readonly value: string;
  readonly title: string;
  readonly meaning: string;
  /** A colour to show, as a wood has. */
  readonly colour?: string;
}

/**
 * Choices side by side, each as a little picture where `drawn` gives the card's text with it, in the ways to be tried.
 * `onChoose` hears the first of them that can be drawn, once that is known.
 */
export function Tiles({
  label,
  choices,
  chosen,
  drawn,
  onChoose,
}: {
  label: string;
  choices: readonly Choice[];
  chosen: string;
  drawn: ((value: string) => string[]) | null;
  onChoose: (value: string, best?: string) => void;
}) {
  const best = useRef(new Map<string, string>()).current;
  return (
    <fieldset class="tiles">
      <legend class="unseen">{label}</legend>
      {choices.map((c) => (
        <label key={c.value} class={drawn || c.colour ? 'tile pictured' : 'tile'} title={c.meaning}>
          <input
            type="radio"
            name="tile"
            class="unseen"
            value={c.value}
            checked={c.value === chosen}
            onChange={() => onChoose(c.value, best.get(c.value))}
          />
          <span class="tile-face">
            {c.colour ? (
              <Wood colour={c.colour} />
            ) : drawn ? (
              <Pictured texts={drawn(c.value)} onBest={(t) => best.set(c.value, t)} />
            ) : null}
            <span class="tile-title">{c.title}</span>
          </span>
        </label>
      ))}
    </fieldset>
  );
}

function Wood({ colour }: { colour: string }) {
  return (
    <svg class="tile-wood" viewBox="0 0 60 24" preserveAspectRatio="none" aria-hidden="true">
      <path d="M0 0H60V24H0Z" fill={colour} />
    </svg>
  );
}

/** The card with this choice, drawn once the tile is seen. */
function Pictured({ texts, onBest }: { texts: readonly string[]; onBest: (text: string) => void }) {
  const place = useRef<HTMLSpanElement>(null);
  const [figure, setFigure] = useState<Figure | null | undefined>(undefined);
  useEffect(() => {
    let takeBack = (): void => {};
    const attempt = (k: number): void => {
      takeBack = wish(texts[k]!, (got) => {
        if (got) onBest(texts[k]!);
        if (got || k + 1 === texts.length) setFigure(got);
        else attempt(k + 1);
      });
    };
    const seen = new IntersectionObserver((all) => {
      if (!all.some((e) => e.isIntersecting)) return;
      seen.disconnect();
      attempt(0);
    });
    seen.observe(place.current!);
    return () => {
      seen.disconnect();
      takeBack();
    };
  }, texts);
  return (
    <span ref={place} class="tile-picture">
      {figure ? (
        <Stamp box={figure.box}>
          <Coloured figure={figure} />
        </Stamp>
      ) : figure === null ? (
        <span class="tile-none">as it stands, it cannot be drawn</span>
      ) : null}
    </span>
  );
}
