import { lettering } from '../../../src/generators/lettering/lettering.js';
import { panel } from '../../../src/generators/panel.js';
import { describeFamily } from '../../support/library.js';

describeFamily([lettering, panel], 4);
