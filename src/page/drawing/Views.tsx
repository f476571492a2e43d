import { round, view } from '../state/bench.js';
import { VIEWS } from '../worker/protocol.js';
import { Said } from './Said.js';
import { Small } from './Small.js';
import { isVessel, showsVessel } from './views.js';
import './views.css';
import { TITLES } from './words.js';

/**
 * Every view as a small true drawing, to choose by; above them what the chosen one shows. The strip wraps: a turning
 * view of staved vessels goes in as one more.
 */
export function Views() {
  return (
    <div class="views">
      <Said />
      <fieldset class="strip">
        <legend class="unseen">View of the piece</legend>
        {VIEWS.map((name) => (
          <label key={name} class="small-view">
            <input
              type="radio"
              name="view"
              class="unseen"
              value={name}
              checked={view.value === name && !showsVessel.value}
              onChange={() => {
                round.value = false;
                view.value = name;
              }}
            />
            <span class="small-frame">
              <Small name={name} />
              <span class="small-title">{TITLES[name]}</span>
            </span>
          </label>
        ))}
        {isVessel.value ? <VesselView /> : null}
      </fieldset>
    </div>
  );
}

/** The whole vessel, as one more view. */
function VesselView() {
  return (
    <label class="small-view">
      <input
        type="radio"
        name="view"
        class="unseen"
        value="vessel"
        checked={showsVessel.value}
        onChange={() => (round.value = true)}
      />
      <span class="small-frame">
        <svg class="stamp-size" viewBox="0 0 50 32" aria-hidden="true">
          <path
            class="plain-face"
            d="M4 4A21 4 0 0 0 46 4C45 18 38 26 33 28A8 2 0 0 1 17 28C12 26 5 18 4 4Z"
          />
          <path class="plain-pocket" d="M4 4A21 4 0 0 1 46 4A21 4 0 0 1 4 4Z" />
        </svg>
        <span class="small-title">Vessel</span>
      </span>
    </label>
  );
}
