export { draw } from './draw.js';
export type { Files, Job } from './job.js';
export { jobText, type ProofResult, type SideProof } from './job-text.js';
export { MARKS_BORDER } from './marks.js';
export { pictureSvg } from './picture.js';
export { makeRenderer, type Renderer } from './renderer.js';
