import { view } from '../state/bench.js';
import { VIEWS } from '../worker/protocol.js';
import { Said } from './Said.js';
import { Small } from './Small.js';
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
              checked={view.value === name}
              onChange={() => (view.value = name)}
            />
            <span class="small-frame">
              <Small name={name} />
              <span class="small-title">{TITLES[name]}</span>
            </span>
          </label>
        ))}
      </fieldset>
    </div>
  );
}
