import { build } from '../build.js';
import type { Job } from '../output/job.js';
import { readRecipe } from '../recipe/read.js';
import { BadInput, Refusal } from '../schema/fault.js';
import { lengthText } from '../schema/units.js';
import { checkFolder, writeFolder } from './folder.js';
import { loadAssets, loadRecipeText, loadRenderer } from './load.js';
import { describeError, message } from './report.js';
