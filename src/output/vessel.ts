import type { Jig } from '../bowl/jig.js';
import type { Vessel } from '../bowl/vessel.js';
import type { Work } from '../bowl/work.js';
import type { Job } from './job.js';

/** What the sheet of a vessel is made from. */
export interface VesselSheet {
  readonly job: Job;
  readonly vessel: Vessel;
  readonly work: Work;
  readonly jigs: readonly Jig[];
  /** PNG pictures by what they show. */
  readonly pictures: readonly { readonly title: string; readonly png: Uint8Array }[];
}
