import { symmetry } from '../../../src/generators/symmetry/index.js';
import { describeFamily } from '../../support/library.js';

describeFamily(symmetry, 4);
