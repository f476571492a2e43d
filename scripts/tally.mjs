/**
 * Adds up test reports into one line, "N passed, N failed". Arguments: pairs of an exit code and the report that
 * run should have written. A run that failed without a failed test to show for it counts as one failure.
 */
import { existsSync, readFileSync } from 'node:fs';
import { isScript } from './setup.mjs';

/**
 * @param {readonly { code: number, report: string | null }[]} runs report: JSON text as vitest writes it, null if missing
 * @returns {{ passed: number, failed: number, skipped: number }}
 */
export function tally(runs) {
  const total = { passed: 0, failed: 0, skipped: 0 };
  for (const { code, report } of runs) {
    let failed = 0;
    for (const file of report === null ? [] : JSON.parse(report).testResults) {
      const tests = file.assertionResults;
      const broken = tests.filter((t) => t.status === 'failed').length;
      // A file that could not even be loaded has no tests to show.
      failed += broken > 0 || file.status !== 'failed' ? broken : 1;
      total.passed += tests.filter((t) => t.status === 'passed').length;
      total.skipped += tests.filter((t) => t.status !== 'passed' && t.status !== 'failed').length;
    }
    total.failed += failed === 0 && (code !== 0 || report === null) ? 1 : failed;
  }
  return total;
}

export function told({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}

if (isScript(import.meta.url)) {
  const args = process.argv.slice(2);
  const runs = [];
  for (let i = 0; i < args.length; i += 2) {
    const file = args[i + 1];
    runs.push({ code: Number(args[i]), report: existsSync(file) ? readFileSync(file, 'utf8') : null });
  }
  const total = tally(runs);
  console.log(told(total));
  process.exitCode = total.failed > 0 ? 1 : 0;
}
