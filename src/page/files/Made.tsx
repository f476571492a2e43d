import { lengthText } from '../../schema/units.js';
import type { Made } from '../../wire.js';
import { isVessel } from '../drawing/views.js';
import { shownIn } from '../state/card.js';
import { addressOf, fetchZip, making, printSheet, STEPS, type Step, stale, stopMaking } from './making.js';

/** The foot of the card while a piece is made, and what came of it. */
export function MadePiece() {
  const now = making.value;
  if (!now) return null;
  if ('now' in now) return <Progress now={now.now} />;
  if ('wrong' in now)
    return (
      <div class="made wrong" role="alert">
        <h2>Not made</h2>
        {now.wrong.map((line) => (
          <p key={line}>{line}</p>
        ))}
        <Away />
      </div>
    );
  return <Done made={now.made} />;
}

function Progress({ now }: { now: Step }) {
  // Only a vessel is modelled.
  const steps = STEPS.filter((s) => s !== 'modelling' || isVessel.value);
  const at = steps.indexOf(now);
  return (
    <div class="made" aria-live="polite">
      <h2 id="making">Making: {now}</h2>
      <progress aria-labelledby="making" max={steps.length} value={at + 0.5} />
      <ol class="steps">
        {steps.map((step, k) => (
          <li key={step} class={k < at ? 'past' : k === at ? 'now' : ''}>
            {step}
          </li>
        ))}
      </ol>
      <button type="button" onClick={stopMaking}>
        Stop
      </button>
    </div>
  );
}

function Done({ made }: { made: Made }) {
  const { required, pocket, plug } = made.proof;
  const fine = (mm: number): string => lengthText(mm, shownIn.value);
  return (
    <div class="made" aria-live="polite">
      <h2>{stale.value ? 'Made before the last changes' : 'Made and proven'}</h2>
      <p>
        Read back from the files: a cutter of radius {fine(required)} gets along every wall; the pocket lets{' '}
        {fine(pocket)} by, the plug {fine(plug)}. All lies in {made.folder}.
      </p>
      <ul class="files">
        {made.files.map((name) => (
          <li key={name}>
            <a
              href={addressOf(made, name)}
              target="_blank"
              rel="noreferrer"
              download={!/\.(html|png|svg)$/.test(name)}
            >
              {name}
            </a>
          </li>
        ))}
      </ul>
      <div class="deeds">
        <button type="button" onClick={() => void fetchZip(made)}>
          Download all as one zip
        </button>
        <button type="button" onClick={() => printSheet(made)}>
          Print the sheet
        </button>
        <Away />
      </div>
    </div>
  );
}

function Away() {
  return (
    <button type="button" onClick={() => (making.value = null)}>
      Put away
    </button>
  );
}
