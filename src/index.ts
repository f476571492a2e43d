/** The library's public face. Nothing here touches files: the same code runs in Node and in a browser. */

export { type Angles, anglesOf } from './bowl/angles.js';
export { type FigureShown, figureShown } from './bowl/figure.js';
export { type BowlSetup, makeVessel, type Vessel } from './bowl/vessel.js';
export { type Work, workOf } from './bowl/work.js';
export { build } from './build.js';
export { type CouponWish, coupon } from './coupon.js';
export type { Loss } from './cutter/loss.js';
export type { Change, Safe } from './cutter/safe.js';
export type { Inlay } from './fit/inlay.js';
export type { Pair } from './fit/pair.js';
export type { Assets, Generator } from './generators/generator.js';
export { findGenerator, generators } from './generators/index.js';
export type { Edge } from './geometry/edge.js';
export type { Contour, Region } from './geometry/region.js';
export type { Finding } from './inspect/finding.js';
export { type CutterLimit, type Limits, limits } from './limits.js';
export { outlineShapes } from './outline/index.js';
export type { Outline, OutlineShape } from './outline/outline.js';
export {
  type Coupon,
  couponAsked,
  couponText,
  draw,
  drawCoupon,
  drawingsOf,
  type InlayFiles,
  jobText,
  makeRenderer,
  type Renderer,
} from './output/index.js';
export type { Files, Job } from './output/job.js';
export {
  type Asked,
  type CouponProof,
  type Proof,
  type ProofFiles,
  prove,
  proveSteps,
} from './proof/index.js';
export { readRecipe } from './recipe/read.js';
export { cornerRadius, cutterRadius, type Recipe } from './recipe/recipe.js';
export { recipeSchema } from './recipe/schema.js';
export { BadInput, type Fault, faultLine, Refusal } from './schema/fault.js';
export type { Parameter, Values } from './schema/parameter.js';
export { type Kernel, startKernel } from './solid/kernel.js';
export { staved } from './staved.js';
