import type { Property, Style } from './properties.js';
import { shortened } from './shortened.js';
import { Unreadable } from './unreadable.js';

/**
 * What a colour means for an inlay, which has one wood: nothing is painted; the figure is (any colour but white); or
 * white is, which shows the field again: it takes away what lies under it.
 */
export type Paint = 'none' | 'figure' | 'white';

/** A colour counts as white when each of its parts is at least this, of 255: scans and exports miss pure white a little. */
const WHITE = 250;

/**
 * Reads `fill` or `stroke`.
 * @param server the name of the element that a url() leads to; undefined when there is none
 */
export function readPaint(
  style: Style,
  property: 'fill' | 'stroke',
  server: (url: string) => string | undefined,
): Paint {
  if (opacity(style, property === 'fill' ? 'fill-opacity' : 'stroke-opacity') === 0) return 'none';
  return paintOf(style[property], style, property, server);
}

function paintOf(
  text: string,
  style: Style,
  property: 'fill' | 'stroke',
  server: (url: string) => string | undefined,
): Paint {
  const value = text.trim().toLowerCase();
  if (value === 'none' || value === 'transparent') return 'none';
  if (value === 'currentcolor') {
    if (style.color.trim().toLowerCase() === 'currentcolor') return 'figure';
    return paintOf(style.color, style, property, server);
  }
  if (value === 'white' || value === 'snow') return 'white';
  if (value.startsWith('url(')) return byReference(text, property, server);
  if (value.startsWith('context-'))
    throw new Unreadable(`has ${property}="${shortened(text)}", which is not read; give it a plain colour`);
  const parts = value.startsWith('#') ? hexParts(value) : functionParts(value);
  if (parts) {
    if (parts[3] === 0) return 'none';
    return parts.slice(0, 3).every((p) => p >= WHITE) ? 'white' : 'figure';
  }
  if (/^[a-z]+$/.test(value)) return 'figure';
  throw new Unreadable(
    `has ${property}="${shortened(text)}", which is no colour; give it one such as black, or none`,
  );
}

function byReference(text: string, property: string, server: (url: string) => string | undefined): Paint {
  const name = server(text);
  // One wood: a gradient is as solid as a colour.
  if (name === 'linearGradient' || name === 'radialGradient') return 'figure';
  const what = name === 'pattern' ? 'a pattern of its own' : 'something that is not in the file';
  throw new Unreadable(`has ${property}="${shortened(text)}", ${what}; give it a plain colour`);
}

/** Red, green, blue, 0 to 255, and opacity, 0 to 1. */
function hexParts(value: string): number[] | null {
  const digits = value.slice(1);
  if (!/^([0-9a-f]{3,4}|[0-9a-f]{6}|[0-9a-f]{8})$/.test(digits)) return null;
  const each = digits.length < 6 ? [...digits].map((d) => d + d) : (digits.match(/../g) ?? []);
  const parts = each.map((d) => Number.parseInt(d, 16));
  return [...parts.slice(0, 3), parts[3] === undefined ? 1 : parts[3] / 255];
}

function functionParts(value: string): number[] | null {
  const found = /^(rgb|hsl)a?\(([^()]*)\)$/.exec(value);
  if (!found) return null;
  const parts = found[2]!.split(/[\s,/]+/).filter((p) => p !== '');
  if (parts.length < 3 || parts.length > 4) return null;
  const share = (p: string, whole: number): number =>
    p.endsWith('%') ? Number(p.slice(0, -1)) / 100 : Number(p) / whole;
  const alpha = parts[3] === undefined ? 1 : share(parts[3], 1);
  // Of hue, saturation and lightness, lightness alone tells white.
  const numbers =
    found[1] === 'rgb'
      ? parts.slice(0, 3).map((p) => share(p, 255) * 255)
      : Array(3).fill(share(parts[2]!, 100) * 255);
  return [...numbers, alpha].every(Number.isFinite) ? [...numbers, alpha] : null;
}

/** An opacity; only whether it is 0 matters, since wood is not see-through. */
export function opacity(style: Style, property: Property): number {
  const value = Number.parseFloat(style[property]);
  return Number.isFinite(value) ? value : 1;
}
