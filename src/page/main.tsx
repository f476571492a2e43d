import { render } from 'preact';
import { Bench } from './Bench.js';
import { startDrawing } from './state/hands.js';
import './style/card.css';
import './style/looks.css';

startDrawing();
render(<Bench />, document.getElementById('bench')!);
