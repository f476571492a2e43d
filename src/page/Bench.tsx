import { PatternBook } from './book/PatternBook.js';
import { Findings } from './card/Findings.js';
import { Sentences } from './card/Sentences.js';
import { Drawing } from './drawing/Drawing.js';
import { Views } from './drawing/Views.js';
import { FileBar } from './files/FileBar.js';
import { choosing } from './state/bench.js';

/** The card on the bench: the drawing on the left with its views below, sentences and findings on the right. */
export function Bench() {
  return (
    <main class="card">
      <FileBar />
      <section class="picture" aria-label="Drawing">
        <Drawing />
        <Views />
      </section>
      <section class="words" aria-label="Card">
        <Sentences />
        <Findings />
      </section>
      {choosing.value ? <PatternBook /> : null}
    </main>
  );
}
