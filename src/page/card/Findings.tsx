import { effect, signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { MarkShape } from '../drawing/MarkShape.js';
import { counted, SEVERITIES } from '../drawing/words.js';
import { held, picked } from '../state/bench.js';
import { drawn, trouble } from '../state/card.js';
import type { Drawn, Pencilled } from '../worker/protocol.js';

/** The newest drawing that was inspected: a coarse one says nothing of findings. */
const inspected = signal<Drawn | null>(null);

/** So many notes are read; more are folded away. */
const NOTES = 4;

/** What was found, worst first, as pencilled on the piece: what to do of each. */
export function Findings() {
  useEffect(
    () =>
      effect(() => {
        if (drawn.value === null || drawn.value.stage === 'exact') inspected.value = drawn.value;
      }),
    [],
  );
  const now = inspected.value;
  return (
    <section class="paragraph findings" aria-label="Findings">
      <h2>Findings</h2>
      <Faults />
      {now ? <List drawn={now} old={now !== drawn.value || trouble.value !== null} /> : null}
    </section>
  );
}

/** The finding that is pointed at, or else the worst, always in sight; and the way to the others. */
export function Foremost() {
  const now = inspected.value;
  const faults = trouble.value?.faults ?? [];
  if (faults.length > 0)
    return (
      <p class="foremost fault">
        {faults[0]!.where === '' ? '' : `${faults[0]!.where}: `}
        {faults[0]!.message}
      </p>
    );
  if (!now) return null;
  const { findings } = now;
  const k = Math.max(
    0,
    findings.findIndex((f) => f.number === picked.value),
  );
  const finding = findings[k];
  if (!finding) return <p class="foremost soft">No findings: nothing was found that would spoil the wood.</p>;
  const next = (): void => {
    const on = picked.value === finding.number ? 1 : 0;
    picked.value = findings[(k + on) % findings.length]!.number;
  };
  const old = now !== drawn.value;
  return (
    <div class={old ? 'foremost old' : 'foremost'}>
      <Mark finding={finding} />
      <p>{finding.do}</p>
      <button type="button" class="quiet" onClick={next}>
        {k + 1} of {findings.length} <span aria-hidden="true">▸</span>
        <span class="unseen">, show the next</span>
      </button>
    </div>
  );
}

function Mark({ finding: { severity, number } }: { finding: Pencilled }) {
  return (
    <>
      <svg class={`finding-mark ${severity}`} viewBox="-17 -17 34 32" aria-hidden="true">
        <MarkShape severity={severity} number={number} />
      </svg>
      <span class="unseen">
        {number}, {SEVERITIES[severity]}:{' '}
      </span>
    </>
  );
}

function List({ drawn: { findings }, old }: { drawn: Drawn; old: boolean }) {
  const graver = findings.filter((f) => f.severity !== 'note');
  const notes = findings.filter((f) => f.severity === 'note');
  const shown = notes.length > NOTES ? notes.slice(0, NOTES - 1) : notes;
  const folded = notes.slice(shown.length);
  return (
    <div class={old ? 'found old' : 'found'}>
      <p class="unseen" role="status">
        {old ? '' : findings.length === 0 ? 'No findings.' : `${counted(findings.length, 'finding')}.`}
      </p>
      {findings.length === 0 ? <p>Nothing was found that would spoil the wood.</p> : null}
      <ol>
        {[...graver, ...shown].map((f) => (
          <One key={f.number} finding={f} />
        ))}
      </ol>
      {folded.length > 0 ? (
        <details class="more" open={folded.some((f) => f.number === picked.value)}>
          <summary>{counted(folded.length, 'more note')}</summary>
          <ol>
            {folded.map((f) => (
              <One key={f.number} finding={f} />
            ))}
          </ol>
        </details>
      ) : null}
    </div>
  );
}

function One({ finding }: { finding: Pencilled }) {
  const { number, do: what, at } = finding;
  const it = useRef<HTMLLIElement>(null);
  const on = picked.value === number;
  useEffect(() => {
    if (on) it.current?.scrollIntoView({ block: 'nearest' });
  }, [on]);
  return (
    <li ref={it} class={on ? 'picked' : ''}>
      <button type="button" aria-pressed={on} onClick={() => (picked.value = on ? null : number)}>
        <Mark finding={finding} />
        <span>
          {what}
          {at === null ? <span class="soft"> (the whole piece)</span> : null}
        </span>
      </button>
    </li>
  );
}

/** What keeps the card from being drawn, each with the way to where it stands. */
function Faults() {
  const faults = trouble.value?.faults ?? [];
  if (faults.length === 0) return null;
  return (
    <div class="faults" role="alert">
      <p>The card cannot be drawn as it stands:</p>
      <ul>
        {faults.map((f) => (
          <li key={`${f.where} ${f.message}`}>
            {f.where === '' ? null : (
              <button type="button" class="quiet" onClick={() => goTo(f.where)}>
                {f.where}
              </button>
            )}{' '}
            {f.message}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Picks the value at a path, or the nearest that holds it. */
function goTo(where: string): void {
  for (let key = where; key !== ''; key = key.slice(0, Math.max(0, key.lastIndexOf('.')))) {
    const value = document.querySelector<HTMLElement>(`[data-key="${CSS.escape(key)}"]`);
    if (!value) continue;
    const fold = value.closest('details');
    if (fold) fold.open = true;
    value.scrollIntoView({ block: 'center' });
    held.value = key;
    return;
  }
}
