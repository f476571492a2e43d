import type { Layer } from '../layer.js';

/** The drawing file that a layer asks for, and the parameter that names it; null when it asks for none. */
export function drawingOf({ generator, values }: Layer): { key: string; file: string } | null {
  if (generator === 'drawing') return { key: 'file', file: String(values.file) };
  if (values.motif === 'drawing') return { key: 'drawing', file: String(values.drawing) };
  return null;
}
