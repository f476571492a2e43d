import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import { createWorker, OEM, PSM } from 'tesseract.js';

/** A reader of printed text that knows nothing of this project: Tesseract, with its data for English, from the disk alone. */
export interface Reader {
  /** The text of a picture, black on white, one line, as it is read: blanks at the ends dropped. */
  read(png: Uint8Array): Promise<string>;
  close(): Promise<void>;
}

const require = createRequire(import.meta.url);

/** Starts one reader, in a thread of its own. Close it, or the thread stays. */
export async function openReader(): Promise<Reader> {
  // The language data lies beside the package's main file; nothing is fetched and nothing is written.
  const data = dirname(require.resolve('@tesseract.js-data/eng/4.0.0_best_int/eng.traineddata.gz'));
  // Names and numbers cut in wood are in no dictionary: what stands there is asked for, not what is likely.
  const plain = { load_system_dawg: '0', load_freq_dawg: '0' };
  const options = { langPath: data, cacheMethod: 'none', gzip: true };
  const worker = await createWorker('eng', OEM.LSTM_ONLY, options, plain);
  await worker.setParameters({ tessedit_pageseg_mode: PSM.SINGLE_LINE });
  return {
    async read(png) {
      const { data } = await worker.recognize(Buffer.from(png));
      return data.text.trim();
    },
    async close() {
      await worker.terminate();
    },
  };
}
