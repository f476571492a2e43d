/** A request that is not answered as asked: its status, and in plain lines why. Nothing of the machine is told. */
export class Denied extends Error {
  constructor(
    readonly status: number,
    line: string,
    /** What is sent instead of the lines, if anything. */
    readonly body: object | null = null,
  ) {
    super(line);
  }
}
