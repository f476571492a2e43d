import { it } from 'vitest';
import { expectMadeOrRefused, SLOW } from '../drawing/corpus-check.js';

it(`${SLOW} is made safe and proven`, () => expectMadeOrRefused(SLOW));
