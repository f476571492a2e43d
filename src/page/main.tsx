import { render } from 'preact';
import { Bench } from './Bench.js';
import { followChanges } from './files/changes.js';
import { startKeys } from './files/keys.js';
import { startCard } from './files/opening.js';
import { unsaved } from './state/card.js';
import { startDrawing } from './state/hands.js';
import { startPrefs } from './state/prefs.js';
import './style/card.css';
import './style/looks.css';

startPrefs();
render(<Bench />, document.getElementById('bench')!);
startKeys();
addEventListener('beforeunload', (e) => {
  if (unsaved.value) e.preventDefault();
});
startDrawing();
await startCard();
void followChanges();
