import { describe, expect, it } from 'vitest';
import { frameTrack } from '../../../src/generators/bands/frame-track.js';
import { laidCurve, type Track, trackLength } from '../../../src/generators/bands/track.js';
import { levelTrack, roundTrack, straightTrack } from '../../../src/generators/bands/tracks.js';
import { distanceToEdge } from '../../../src/geometry/region.js';

const square = [0, 1, 2, 3].map((i) => ({
  start: [
    [-40, -30],
    [40, -30],
    [40, 30],
    [-40, 30],
  ][i] as [number, number],
  heading: (i * Math.PI) / 2,
  length: i % 2 === 0 ? 80 : 60,
}));

const TRACKS: readonly (readonly [string, Track])[] = [
  ['straight', straightTrack('free', [3, 4], 0.3, 5, 20)],
  ['inwards', roundTrack('closed', { centre: [1, 2], radius: 40, from: 0.4, sense: 1 }, 8, 10 * Math.PI)],
  ['outwards', roundTrack('joint', { centre: [0, -300], radius: 300, from: 1.7, sense: -1 }, 4, 20)],
  ['level', levelTrack({ middle: 40, slope: 0.1 }, 12, 4, 20)],
  ['frame', frameTrack(square, 15, [3, 2])],
];

describe.each(TRACKS)('the %s track', (_, track) => {
  const whole = trackLength(track);

  it('moves as it says: differences agree with its derivatives', () => {
    const h = 1e-5;
    for (let i = 0; i < 60; i++)
      for (const t of [-7, -1, 0, 4, 7]) {
        const s = ((i + 0.37) / 60) * whole;
        const { along, across } = track.spot(s, t);
        const [a, b] = [track.spot(s - h, t).at, track.spot(s + h, t).at];
        const [c, d] = [track.spot(s, t - h).at, track.spot(s, t + h).at];
        for (const k of [0, 1] as const) {
          expect((b[k] - a[k]) / (2 * h)).toBeCloseTo(along[k], 5);
          expect((d[k] - c[k]) / (2 * h)).toBeCloseTo(across[k], 5);
        }
        // Left of the way.
        expect(along[0] * across[1] - along[1] * across[0]).toBeGreaterThan(0);
      }
  });

  it('lays a wave within 0.0015 mm', () => {
    const wave = (u: number): [number, number] => [u * whole, 6 * Math.sin(12 * u)];
    const path = laidCurve(track, { point: wave, tangent: (u) => [whole, 72 * Math.cos(12 * u)] }, 0, 1, 16);
    for (let i = 0; i <= 900; i++) {
      const [x, y] = track.spot(...wave(i / 900)).at;
      expect(Math.min(...path.map((e) => distanceToEdge(e, x, y)))).toBeLessThan(0.0016);
    }
    expect(path.length).toBeLessThan(260);
  });

  it('draws lines along itself that keep their place', () => {
    for (const t of [-7, 5]) {
      const path = track.along(t, 0.1 * whole, 0.9 * whole);
      for (let i = 0; i <= 200; i++) {
        const [x, y] = track.spot((0.1 + (0.8 * i) / 200) * whole, t).at;
        expect(Math.min(...path.map((e) => distanceToEdge(e, x, y)))).toBeLessThan(0.0016);
      }
    }
  });
});

it('a frame has its repeats evenly on each side and its corners half way', () => {
  const track = frameTrack(square, 15, [3, 2]);
  expect(track.repeats).toBe(10);
  // Corners after 0, 3, 5 and 8 repeats: there the way runs at half a right angle, on the corner's bisector.
  const heading = (s: number) => Math.atan2(track.spot(s, 0).along[1], track.spot(s, 0).along[0]);
  [0, 3, 5, 8].forEach((n, i) => {
    const a = heading(n * track.repeat) - (i * Math.PI) / 2 + Math.PI / 4;
    expect(Math.sin(a)).toBeCloseTo(0, 9);
  });
});
