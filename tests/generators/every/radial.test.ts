import { radial } from '../../../src/generators/radial/index.js';
import { describeFamily } from '../../support/library.js';

describeFamily(radial, 4);
