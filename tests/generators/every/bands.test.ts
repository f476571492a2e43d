import { bands } from '../../../src/generators/bands/index.js';
import { describeFamily } from '../../support/library.js';

describeFamily(bands, 4);
