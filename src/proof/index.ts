export { angleOf } from './angle.js';
export {
  type Certificate,
  type CertifyAsked,
  certify,
  certifyDrawing,
  drawingOfEdges,
  type PlainEdge,
} from './certify.js';
export { crossing } from './crossings.js';
export { difference } from './difference.js';
export { Drawing, mirrored, type Unit } from './drawing.js';
export type { Edges } from './edges.js';
export { type FieldReach, fieldReach } from './field-reach.js';
export { type Gap, gap } from './gap.js';
export { type GapRun, gapRuns } from './gap-runs.js';
export { type Joint, worstJoint } from './joints.js';
export { type LayoutAsked, type LayoutFiles, type LayoutProof, proveLayout } from './layout.js';
export { Unreadable } from './place.js';
export { type Asked, type Proof, type ProofFiles, prove, type SideProof } from './prove.js';
export { type CouponProof, type CouponStepAsked, proveSteps, type StepsAsked } from './prove-steps.js';
export { PRESS, type Reach, reach } from './reach.js';
export { readDxf } from './read-dxf.js';
export { readSvg } from './read-svg.js';
export { type TightKind, type TightPlace, tightPlaces } from './tight-places.js';
