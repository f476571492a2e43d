import { knots } from '../../../src/generators/knots/index.js';
import { describeFamily } from '../../support/library.js';

describeFamily(knots, 4);
