/** What waits to be drawn. What came into sight last comes first, and of what came at once the first. */
export class Queue {
  #waiting: string[] = [];

  /** These came into sight. */
  want(keys: readonly string[]): void {
    const now = new Set(keys);
    this.#waiting = [...now, ...this.#waiting.filter((key) => !now.has(key))];
  }

  /** These went out of sight: nobody waits for them. */
  leave(keys: readonly string[]): void {
    const gone = new Set(keys);
    this.#waiting = this.#waiting.filter((key) => !gone.has(key));
  }

  clear(): void {
    this.#waiting = [];
  }

  /** Takes the next out. */
  take(): string | undefined {
    return this.#waiting.shift();
  }
}
