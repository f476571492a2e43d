import { tilings } from '../../../src/generators/tilings/index.js';
import { describeFamily } from '../../support/library.js';

describeFamily(tilings, 4);
