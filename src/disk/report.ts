import { BadInput, faultLine, printable, Refusal } from '../schema/fault.js';
import { errorCode, whyOf } from './files.js';

/** A reader that has gone (`| head`) is no error of ours: go on without it, so that what was asked is still made. */
export function quietPipes(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (e: NodeJS.ErrnoException) => {
      if (e.code === 'EPIPE') return;
      if (stream === process.stdout) message(`cannot write the result: ${whyOf(e)}`);
      process.exit(2);
    });
  }
}

/** What went wrong as lines, each a sentence of its own, and the exit code. `subject` says what it was about. */
export function describeError(e: unknown, subject = ''): { lines: string[]; code: number } {
  const about = (line: string): string =>
    subject === '' || line.startsWith(subject) ? line : `${subject}: ${line}`;
  if (e instanceof BadInput) return { lines: e.faults.map((f) => about(faultLine(f))), code: 2 };
  if (e instanceof Refusal) return { lines: [about(`refused: ${e.message}${place(e)}`)], code: 1 };
  const code = errorCode(e);
  if (code === 'EMFILE' || code === 'ENFILE')
    return {
      lines: [about(`${whyOf(e)}: close other programs or raise the limit (ulimit -n), then run this again`)],
      code: 2,
    };
  if (process.env.INLAYWRIGHT_DEBUG && e instanceof Error)
    return { lines: (e.stack ?? e.message).split('\n'), code: 1 };
  const message = e instanceof Error ? e.message.split('\n')[0] : String(e);
  return {
    lines: [
      about(`internal error: ${message}; please report it (INLAYWRIGHT_DEBUG=1 shows where it happened)`),
    ],
    code: 1,
  };
}

/** Prints what went wrong to stderr and returns the exit code. */
export function reportError(e: unknown, subject = ''): number {
  const { lines, code } = describeError(e, subject);
  for (const line of lines) message(line);
  return code;
}

/** One line to stderr. */
export function message(line: string): void {
  process.stderr.write(`inlaywright: ${printable(line)}\n`);
}

function place({ at }: Refusal): string {
  return at ? ` (at x ${at[0].toFixed(2)}, y ${at[1].toFixed(2)} mm from the middle of the piece)` : '';
}
