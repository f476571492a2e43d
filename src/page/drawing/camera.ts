import type { Box } from '../worker/protocol.js';

/*
 * How the paper is looked at: which point of the piece lies in the middle of the room, and how large a millimetre is
 * there. Piece in mm, y down; screen in CSS pixels from the room's upper left corner.
 */

export interface Camera {
  /** What lies in the middle of the room, mm. */
  readonly x: number;
  readonly y: number;
  /** Pixels a millimetre. */
  readonly scale: number;
}

export interface Room {
  readonly width: number;
  readonly height: number;
}

export type Point = readonly [number, number];

/** Room kept round the whole piece for its dimensions, the scale bar and what is written in the corners, pixels. */
const RIM = { left: 58, right: 30, top: 46, bottom: 74 } as const;

/** Nearest: a clearance of 0.02 mm is 8 pixels wide. Farthest: half the size at which the whole piece fits. */
const NEAREST = 400;
const FARTHEST = 0.5;

/** The whole box in the room, with its rim. */
export function fitted(box: Box, room: Room): Camera {
  const w = Math.max(box.maxX - box.minX, 0.01);
  const h = Math.max(box.maxY - box.minY, 0.01);
  // A small room gives the rim a third of itself at most.
  const rim = Math.min(1, room.width / 264, room.height / 360);
  const wide = Math.max(20, room.width - rim * (RIM.left + RIM.right));
  const high = Math.max(20, room.height - rim * (RIM.top + RIM.bottom));
  const scale = Math.min(wide / w, high / h);
  return {
    x: (box.minX + box.maxX) / 2 - (rim * (RIM.left - RIM.right)) / 2 / scale,
    y: (box.minY + box.maxY) / 2 - (rim * (RIM.top - RIM.bottom)) / 2 / scale,
    scale,
  };
}

export function toScreen({ x, y, scale }: Camera, room: Room, [u, v]: Point): Point {
  return [(u - x) * scale + room.width / 2, (v - y) * scale + room.height / 2];
}

export function toPiece({ x, y, scale }: Camera, room: Room, [u, v]: Point): Point {
  return [(u - room.width / 2) / scale + x, (v - room.height / 2) / scale + y];
}

/** Nearer (factor over 1) or farther; what lies under the screen point stays there. */
export function zoomed(camera: Camera, factor: number, at: Point, box: Box, room: Room): Camera {
  const least = fitted(box, room).scale * FARTHEST;
  const scale = Math.min(Math.max(camera.scale * factor, least), Math.max(NEAREST, least));
  const [u, v] = toPiece(camera, room, at);
  return held(
    {
      x: u - (at[0] - room.width / 2) / scale,
      y: v - (at[1] - room.height / 2) / scale,
      scale,
    },
    box,
    room,
  );
}

/** The paper pushed by so many pixels. */
export function pushed(camera: Camera, dx: number, dy: number, box: Box, room: Room): Camera {
  return held({ ...camera, x: camera.x - dx / camera.scale, y: camera.y - dy / camera.scale }, box, room);
}

/** The middle of the room stays over the box, or nearly, so that the piece is never lost. */
function held({ x, y, scale }: Camera, box: Box, room: Room): Camera {
  const [sx, sy] = [room.width / 4 / scale, room.height / 4 / scale];
  return {
    x: Math.min(Math.max(x, box.minX - sx), box.maxX + sx),
    y: Math.min(Math.max(y, box.minY - sy), box.maxY + sy),
    scale,
  };
}

/** So alike in size that what was looked at is still there: both sides within a quarter. */
export function alike(a: Box, b: Box): boolean {
  const near = (p: number, q: number): boolean => Math.abs(p - q) <= 0.25 * Math.max(p, q);
  return near(a.maxX - a.minX, b.maxX - b.minX) && near(a.maxY - a.minY, b.maxY - b.minY);
}

/** Does the point lie in the room, at least `rim` pixels from its edge? */
export function inRoom(camera: Camera, room: Room, at: Point, rim: number): boolean {
  const [x, y] = toScreen(camera, room, at);
  return x >= rim && y >= rim && x <= room.width - rim && y <= room.height - rim;
}

/** SVG's transform from the piece to the screen. */
export function matrix(camera: Camera, room: Room): string {
  const [tx, ty] = toScreen(camera, room, [0, 0]);
  const s = camera.scale;
  return `matrix(${s} 0 0 ${s} ${tx} ${ty})`;
}
