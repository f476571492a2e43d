/** Group codes and values of a DXF file, with a counter of handles (every object of an R2000 file has its own). */
export class DxfWriter {
  readonly #lines: string[] = [];
  #next = 1;

  /** Writes group codes and values, in pairs. */
  put(...pairs: (readonly [code: number, value: string | number])[]): void {
    for (const [code, value] of pairs) this.#lines.push(String(code).padStart(3), String(value));
  }

  /** A new handle, upper-case hexadecimal. */
  handle(): string {
    return (this.#next++).toString(16).toUpperCase();
  }

  text(): string {
    return `${this.#lines.join('\n')}\n`;
  }
}
