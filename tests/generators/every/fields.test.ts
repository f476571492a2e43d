import { fields } from '../../../src/generators/fields/index.js';
import { describeFamily } from '../../support/library.js';

describeFamily(fields, 4);
