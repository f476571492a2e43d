import { useEffect, useState } from 'preact/hooks';
import { PatternBook } from './book/PatternBook.js';
import { Dock } from './card/Dock.js';
import { Findings, Foremost } from './card/Findings.js';
import { Sentences } from './card/Sentences.js';
import { Drawing } from './drawing/Drawing.js';
import { Views } from './drawing/Views.js';
import { Clash } from './files/Clash.js';
import { dropped } from './files/dropping.js';
import { FileBar } from './files/FileBar.js';
import { MadePiece } from './files/Made.js';
import { Naming } from './files/Naming.js';
import { choosing, notice } from './state/bench.js';
import { text } from './state/card.js';

/** The card on the bench: the drawing on the left with its views below, sentences and findings on the right. */
export function Bench() {
  const over = useDropping();
  return (
    <div class={over ? 'bench over' : 'bench'}>
      <main class="card">
        <FileBar />
        <Clash />
        {text.value === '' ? (
          <Empty />
        ) : (
          <>
            <section class="picture" aria-label="Drawing">
              <Drawing />
              <Views />
            </section>
            <section class="words" aria-label="Card">
              <div class="scroll">
                <Sentences />
                <Findings />
              </div>
              <Foremost />
              <Dock />
              <MadePiece />
            </section>
          </>
        )}
      </main>
      <Notice />
      <Naming />
      {choosing.value ? <PatternBook /> : null}
    </div>
  );
}

/** A bench with nothing on it. */
function Empty() {
  return (
    <section class="empty">
      <p>Nothing lies on the bench yet.</p>
      <button type="button" class="main" onClick={() => (choosing.value = true)}>
        Open the pattern book
      </button>
      <p class="soft">Or drop a drawing (SVG, DXF), a font or a recipe anywhere on this page.</p>
    </section>
  );
}

/** How long a notice stays, ms. */
const STAYS = 8000;

function Notice() {
  const said = notice.value;
  useEffect(() => {
    if (said === '') return;
    const gone = setTimeout(() => {
      if (notice.value === said) notice.value = '';
    }, STAYS);
    return () => clearTimeout(gone);
  }, [said]);
  return (
    <p class={said === '' ? 'notice none' : 'notice'} role="status">
      {said}
    </p>
  );
}

/** Takes files dropped anywhere; true while some are held over the page. */
function useDropping(): boolean {
  const [over, setOver] = useState(false);
  useEffect(() => {
    const hold = (e: DragEvent): void => {
      if (!e.dataTransfer?.types.includes('Files')) return;
      e.preventDefault();
      setOver(true);
    };
    const leave = (e: DragEvent): void => {
      if (e.relatedTarget === null) setOver(false);
    };
    const drop = (e: DragEvent): void => {
      e.preventDefault();
      setOver(false);
      void dropped([...(e.dataTransfer?.files ?? [])]);
    };
    addEventListener('dragover', hold);
    addEventListener('dragleave', leave);
    addEventListener('drop', drop);
    return () => {
      removeEventListener('dragover', hold);
      removeEventListener('dragleave', leave);
      removeEventListener('drop', drop);
    };
  }, []);
  return over;
}
