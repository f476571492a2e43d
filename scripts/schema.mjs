// Writes recipe.schema.json from the descriptions in the source. Needs a build: `npm run build` first.
import { writeFileSync } from 'node:fs';
import { recipeSchema } from '../dist/recipe/schema.js';

const file = new URL('../recipe.schema.json', import.meta.url);
writeFileSync(file, `${JSON.stringify(recipeSchema(), null, 2)}\n`);
