import type { Parameter, Values } from '../schema/parameter.js';
import { length } from './values.js';

/** One layer of a pattern: what a generator draws, where, and how it goes together with the layers before it. */
export interface Layer {
  readonly generator: string;
  readonly values: Values;
  readonly combine: 'union' | 'subtract' | 'intersect';
  /** Wood kept plain round what the layer draws, mm. */
  readonly clear: number;
  /** What happens to figures of earlier layers that lie partly in what is taken away. */
  readonly nearby: 'cut' | 'drop';
  /** Where the layer is drawn: the piece's own outline moved in, or a shape of its own. */
  readonly within: Within;
}

export interface Within {
  /** An outline's shape and its values; null for the piece's own outline. */
  readonly shape: { readonly shape: string; readonly values: Values } | null;
  /** How far the edge is moved in, mm. */
  readonly inset: number;
  /** Where the shape's middle lies, mm from the outline's middle. */
  readonly x: number;
  readonly y: number;
}

export const WHOLE: Within = { shape: null, inset: 0, x: 0, y: 0 };

/** A recipe may stack this many layers. */
export const MOST_LAYERS = 12;

/** A layer's own keys, beside its generator's parameters and `within`. */
export const layerParameters: readonly Parameter[] = [
  {
    kind: 'choice',
    name: 'combine',
    meaning: 'How the layer goes together with those before it.',
    say: 'set to … with earlier layers',
    default: 'union',
    options: [
      { value: 'union', meaning: 'it is let in beside them' },
      { value: 'subtract', meaning: 'it is taken out of them' },
      { value: 'intersect', meaning: 'only what lies in both stays' },
    ],
  },
  length(
    'clear',
    'Wood kept plain round the layer: what earlier layers drew nearer than this is taken away.',
    { say: '… kept plain round it', often: [0, 20] },
    0,
    0,
    200,
  ),
  {
    kind: 'choice',
    name: 'nearby',
    meaning: 'What happens to figures of earlier layers that lie partly in what is taken away.',
    say: 'set to … figures nearby',
    default: 'cut',
    options: [
      { value: 'cut', meaning: 'they are cut off there' },
      { value: 'drop', meaning: 'they are left out whole' },
    ],
  },
];

const place = (name: string, meaning: string, say: string): Parameter => ({
  kind: 'length',
  name,
  meaning,
  say,
  default: 0,
  min: -3000,
  max: 3000,
});

/** The keys of `within` beside its shape and that shape's parameters. */
export const withinParameters: readonly Parameter[] = [
  length(
    'inset',
    "How far inside the outline's margin, or the shape's, the layer's edge lies.",
    'its edge moved in by …',
    0,
    0,
    1500,
  ),
  place(
    'x',
    "Where the shape's middle lies, to the right of the outline's middle.",
    '… to the right of the middle',
  ),
  place('y', "Where the shape's middle lies, above the outline's middle.", '… above the middle'),
];
