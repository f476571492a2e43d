import type { Measurable } from '../../schema/usual.js';
import { book, settle, shownIn } from '../state/card.js';
import type { Item } from './items.js';
import { put, standing, units } from './on-card.js';
import { ruleOf } from './rule.js';
import { Steel } from './Steel.js';
import { stepItem } from './step.js';
import { Typed } from './Typed.js';
import { bareText, measureText, unitOf, writtenSize } from './values.js';

/** A size: to type, to step, to slide along its rule. */
export function OfSize({ item, p }: { item: Item; p: Measurable }) {
  const { written, held: now } = standing(item);
  const size = typeof now === 'number' ? now : p.default;
  const rule = ruleOf(p, size, shownIn.value);
  const inUnit = Number(bareText(p, size, shownIn.value));
  const words = p.kind === 'length' ? (p.words ?? []) : [];
  const cutters = /^(cutter|roughing)\.diameter$/.test(item.key) ? (book.value?.cutters ?? []) : [];
  return (
    <>
      <div class="size">
        <button type="button" class="step" aria-label="Less" onClick={() => stepItem(item, -1)}>
          −
        </button>
        <Typed
          item={item}
          now={now === null ? '' : bareText(p, now, shownIn.value, written)}
          unit={unitOf(p, shownIn.value)}
        />
        <button type="button" class="step" aria-label="More" onClick={() => stepItem(item, 1)}>
          +
        </button>
        {words.map((w) => (
          <button key={w} type="button" aria-pressed={written === w} onClick={() => put(item, w)}>
            {w}
          </button>
        ))}
        {cutters.map((c) => (
          <button
            key={c}
            type="button"
            class="cutter"
            aria-pressed={written === c}
            onClick={() => put(item, c)}
          >
            {c.replace(/(mm|in)$/, ' $1')}
          </button>
        ))}
      </div>
      <div class="ruled">
        <Steel rule={rule} />
        <input
          class="slide"
          type="range"
          min={rule.from}
          max={rule.to}
          step={rule.step}
          value={inUnit}
          aria-label={p.meaning}
          aria-valuetext={measureText(p, size, shownIn.value)}
          onInput={(e) => {
            const at = e.currentTarget.valueAsNumber;
            put(item, writtenSize(p, at, shownIn.value, units()), true);
          }}
          onChange={settle}
        />
      </div>
    </>
  );
}
