/**
 * Simulated makers, whose good range is hidden, and ways to search for it: used by scripts/fit-study.mjs and its test.
 */

export const RESULTS = ['cracked', 'tight', 'good', 'loose', 'gappy'];

/** The spread the makers are drawn from, mm per side, each evenly; and how noisy their results are. */
export const SPREAD = {
  first: [0.04, 0.14],
  tight: [0.02, 0.05],
  good: [0.03, 0.07],
  loose: [0.02, 0.06],
  swell: [0, 0.04],
  /** Standard deviation of the clearance that is really cut and judged, normal. */
  scatter: 0.01,
  /** Share of results that are written down one class too tight or too loose. */
  slips: 0.03,
};

/** Nobody goes on for ever: beyond this many the search has failed. */
const MOST = 30;

/** Numbers from 0 to 1 by Marsaglia's xorshift32 (2003): the study must not hang on the engine. */
export function random(seed) {
  let s = seed >>> 0 || 1;
  const next = () => {
    s ^= s << 13;
    s >>>= 0;
    s ^= s >>> 17;
    s ^= s << 5;
    s >>>= 0;
    return s / 4294967296;
  };
  for (let k = 0; k < 20; k++) next();
  return next;
}

/** A maker with hidden borders, and a way to try a clearance. */
export function maker(next, spread = SPREAD) {
  const draw = ([from, to]) => from + (to - from) * next();
  const t2 = draw(spread.first);
  const t3 = t2 + draw(spread.good);
  const borders = [t2 - draw(spread.tight), t2, t3, t3 + draw(spread.loose)];
  const swell = draw(spread.swell);
  /** Twelve even numbers less six: nearly normal, mean 0, deviation 1. */
  const normal = () => Array.from({ length: 12 }, next).reduce((a, b) => a + b, -6);
  return {
    isGood: (clearance) => clearance > t2 && clearance < t3,
    /** One piece: tried dry, and glued unless the field cracked. */
    piece(clearance) {
      const trials = [];
      for (const tried of ['dry', 'glued']) {
        const seen = clearance + (tried === 'dry' ? swell : 0) + spread.scatter * normal();
        let k = borders.filter((t) => seen > t).length;
        if (next() < spread.slips) k = Math.min(4, Math.max(0, k + (next() < 0.5 ? -1 : 1)));
        trials.push({ clearance, result: RESULTS[k], tried });
        if (RESULTS[k] === 'cracked') break;
      }
      return trials;
    },
  };
}

/*
 * The ways to search. Each is given a maker and returns how many times it went to the machine, how many pieces it cut
 * and the clearance it ended with; null when it gave up.
 */

/** Coupons of five steps, cut and read as the fit log says, until it says stop. */
export const coupons =
  (advise, steps = 5) =>
  (who) => {
    const trials = [];
    for (let visits = 0; visits <= MOST; visits++) {
      const advice = advise(trials, { steps, repeatability: 0.02 });
      if (advice.do === 'stop') return { visits, pieces: visits * steps, clearance: advice.use.clearance };
      for (const c of advice.ladder) trials.push(...who.piece(c));
    }
    return { visits: MOST, pieces: MOST * steps, clearance: null };
  };

/** One clearance at a time, each chosen and judged by the model of the fit log: what a tireless statistician would do. */
export const singles =
  ({ believe, surest, split, ENOUGH }) =>
  (who) => {
    const trials = [];
    let clearance = 0.08;
    for (let visits = 1; visits <= MOST; visits++) {
      trials.push(...who.piece(clearance));
      const belief = believe(trials);
      const best = surest(belief);
      const held = trials.some((t) => t.tried === 'glued' && t.result === 'good');
      if (held && best.confidence >= ENOUGH) return { visits, pieces: visits, clearance: best.clearance };
      const gains = Array.from({ length: 31 }, (_, k) => split(belief, [k / 100]));
      clearance = gains.indexOf(Math.max(...gains)) / 100;
    }
    return { visits: MOST, pieces: MOST, clearance: null };
  };

/** A bench where single pieces are cut and glued, and counted: below 0 too tight, 0 good, above 0 too loose. */
function bench(who) {
  const done = {
    visits: 0,
    tryOne(clearance) {
      done.visits++;
      return RESULTS.indexOf(who.piece(clearance).at(-1).result) - 2;
    },
    /** Tries again what was good; the first result that is not, or 0. */
    repeat(clearance, times) {
      for (let k = 0; k < times; k++) {
        const r = done.tryOne(clearance);
        if (r !== 0) return r;
      }
      return 0;
    },
    end: (clearance) => ({ visits: done.visits, pieces: done.visits, clearance }),
  };
  return done;
}

/** From loose to tight by 0.02 mm, since too tight costs a field; a good one is tried again `confirm` times, then used. */
export const stepDown = (confirm) => (who) => {
  const b = bench(who);
  for (let c = 0.2; b.visits < MOST && c > 0; ) {
    const r = b.tryOne(c);
    if (r === 0 && b.repeat(c, confirm) === 0) return b.end(c);
    c += r < 0 ? 0.02 : -0.02;
  }
  return b.end(null);
};

/** Halving between 0 and 0.24 mm until a piece is good and stays so `confirm` times; the span widens if all is ruled out. */
export const halving = (confirm) => (who) => {
  const b = bench(who);
  for (let [low, high] = [0, 0.24]; b.visits < MOST; ) {
    if (high - low < 0.01) [low, high] = [Math.max(0, low - 0.06), high + 0.06];
    const c = (low + high) / 2;
    const r = b.tryOne(c) || b.repeat(c, confirm);
    if (r === 0) return b.end(c);
    if (r < 0) low = c;
    else high = c;
  }
  return b.end(null);
};

/** One good piece by halving, then halving towards both ends of the good range down to 0.02 mm; its middle is used. */
export const bothEnds = () => (who) => {
  const b = bench(who);
  let [low, high] = [0, 0.24];
  let good = null;
  while (good === null && high - low >= 0.01) {
    const c = (low + high) / 2;
    const r = b.tryOne(c);
    if (r === 0) good = c;
    else if (r < 0) low = c;
    else high = c;
  }
  if (good === null) return b.end(null);
  let [from, to] = [good, good];
  while (from - low > 0.02) {
    const c = (low + from) / 2;
    if (b.tryOne(c) === 0) from = c;
    else low = c;
  }
  while (high - to > 0.02) {
    const c = (to + high) / 2;
    if (b.tryOne(c) === 0) to = c;
    else high = c;
  }
  return b.end((from + to) / 2);
};

/** Runs one way of searching on `count` makers. A search that ends wrong has not found the range: it counts as endless. */
export function study(search, count, seed, spread = SPREAD) {
  const visits = [];
  const pieces = [];
  let wrong = 0;
  let never = 0;
  for (let k = 0; k < count; k++) {
    const next = random(seed + 7919 * k);
    const who = maker(next, spread);
    const end = search(who);
    const found = end.clearance !== null && who.isGood(end.clearance);
    if (end.clearance === null) never++;
    else if (!found) wrong++;
    visits.push(found ? end.visits : Infinity);
    pieces.push(found ? end.pieces : Infinity);
  }
  return {
    visits: quantile(visits, 0.5),
    nine: quantile(visits, 0.9),
    pieces: quantile(pieces, 0.5),
    wrong: wrong / count,
    never: never / count,
  };
}

function quantile(values, q) {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.ceil(q * sorted.length) - 1];
}
