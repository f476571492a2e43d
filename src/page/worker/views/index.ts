import type { Assets } from '../../../generators/generator.js';
import type { Job } from '../../../output/job.js';
import type { Units } from '../../../schema/units.js';
import type { View, ViewName } from '../protocol.js';
import { couponView } from './coupon.js';
import { gapView } from './gap.js';
import { pieceView, plugView, pocketView } from './parts.js';
import { reachView } from './reach.js';
import { sectionView } from './section.js';
import { wallsView } from './walls.js';

const VIEWS: Readonly<Record<ViewName, (job: Job, units: Units, assets: Assets) => View>> = {
  piece: pieceView,
  pocket: pocketView,
  plug: plugView,
  gap: gapView,
  reach: reachView,
  walls: wallsView,
  section: sectionView,
  coupon: (job, units, assets) => couponView(job, assets, units),
};

/** One view of a job. Throws as `coupon` does. */
export function viewNamed(view: ViewName, job: Job, units: Units, assets: Assets): View {
  return VIEWS[view](job, units, assets);
}
