import { effect } from '@preact/signals';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Round } from '../../wire.js';
import { bytesOf } from '../api/client.js';
import { wordsOf } from '../files/words.js';
import { drawing, drawn, file, shipped, text, trouble } from '../state/card.js';
import type { Look, VesselScene } from './scene.js';
import './vessel.css';

const LOOKS: readonly Look[] = ['outside', 'inside', 'cut away'];

/** The finished vessel, to be turned by mouse, touch and keys. What shows it is loaded when it is first wanted. */
export function Turned() {
  const place = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const scene = useRef<VesselScene | null>(null);
  const [said, say] = useState('The vessel is being turned …');
  const [look, setLook] = useState<Look>('outside');
  useEffect(() => {
    let over = false;
    let stop = (): void => {};
    const room = place.current!;
    const sizes = new ResizeObserver(() => scene.current?.resize(room.clientWidth, room.clientHeight));
    void import('./scene.js').then(
      ({ VesselScene }) => {
        if (over) return;
        try {
          scene.current = new VesselScene(canvas.current!);
        } catch {
          say(
            'This browser draws nothing in three dimensions. The pictures that Make writes show the vessel too.',
          );
          return;
        }
        sizes.observe(room);
        stop = follow(scene.current, say);
      },
      () => say('What shows the vessel could not be loaded: is inlaywright serve still running?'),
    );
    return () => {
      over = true;
      stop();
      sizes.disconnect();
      scene.current?.dispose();
      scene.current = null;
    };
  }, []);
  return (
    <div ref={place} class="turned">
      <canvas
        ref={canvas}
        tabIndex={0}
        role="img"
        aria-label="The finished vessel. Arrow keys turn it, plus and minus bring it nearer or farther."
        onKeyDown={(e) => {
          if (keyed(scene.current, e)) e.preventDefault();
        }}
      />
      <fieldset class="looks">
        <legend class="unseen">Look at it from</legend>
        {LOOKS.map((l) => (
          <button
            key={l}
            type="button"
            aria-pressed={look === l}
            onClick={() => {
              setLook(l);
              scene.current?.look(l);
            }}
          >
            {l}
          </button>
        ))}
      </fieldset>
      <p class={said === '' ? 'unseen' : 'no-drawing'} role="status">
        {said}
      </p>
    </div>
  );
}

/** Asks for the vessel of every exact drawing, and shows it; the newest alone counts. */
function follow(scene: VesselScene, say: (words: string) => void): () => void {
  let asked: unknown = null;
  let stop = new AbortController();
  const over = effect(() => {
    const now = drawn.value;
    if (drawing.value || trouble.value || now?.stage !== 'exact' || asked === now) return;
    asked = now;
    stop.abort();
    stop = new AbortController();
    const { signal } = stop;
    const json = { file: file.peek().path, shipped: shipped.peek(), text: text.peek() } satisfies Round;
    bytesOf('/api/vessel', { json, signal }, 'POST')
      .then((model) => scene.show(model, now.recipe.bowl!.height))
      .then(
        () => say(''),
        (e: unknown) => {
          if (!signal.aborted) say(wordsOf(e));
        },
      );
  });
  return () => {
    over();
    stop.abort();
  };
}

function keyed(scene: VesselScene | null, e: KeyboardEvent): boolean {
  if (!scene || e.ctrlKey || e.metaKey || e.altKey) return false;
  if (e.key === 'ArrowLeft') scene.turn(-1, 0);
  else if (e.key === 'ArrowRight') scene.turn(1, 0);
  else if (e.key === 'ArrowUp') scene.turn(0, 1);
  else if (e.key === 'ArrowDown') scene.turn(0, -1);
  else if (e.key === '+' || e.key === '=') scene.turn(0, 0, 1.15);
  else if (e.key === '-' || e.key === '_') scene.turn(0, 0, 1 / 1.15);
  else return false;
  return true;
}
