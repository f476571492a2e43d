const MM_PER_INCH = 25.4;
const MM_PER_FOOT = 12 * MM_PER_INCH;
/** The survey foot is 1200 / 3937 m (National Institute of Standards and Technology, SP 811, appendix B). */
const MM_PER_SURVEY_FOOT = 1_200_000 / 3937;

/** Millimetres a unit, by the codes of $INSUNITS (DXF reference, header section). 0 is "no unit". */
const UNITS: ReadonlyMap<number, number> = new Map([
  [1, MM_PER_INCH],
  [2, MM_PER_FOOT],
  [3, 5280 * MM_PER_FOOT],
  [4, 1],
  [5, 10],
  [6, 1000],
  [7, 1e6],
  [8, MM_PER_INCH / 1e6],
  [9, MM_PER_INCH / 1e3],
  [10, 3 * MM_PER_FOOT],
  [11, 1e-7],
  [12, 1e-6],
  [13, 1e-3],
  [14, 100],
  [15, 1e4],
  [16, 1e5],
  [17, 1e12],
  // The astronomical unit is exact (IAU 2012); light year and parsec follow from it and the speed of light.
  [18, 1.495978707e14],
  [19, 9.4607304725808e18],
  [20, 3.085677581491367e19],
  [21, MM_PER_SURVEY_FOOT],
  [22, MM_PER_SURVEY_FOOT / 12],
  [23, 3 * MM_PER_SURVEY_FOOT],
  [24, 5280 * MM_PER_SURVEY_FOOT],
]);

/** Millimetres a drawing unit; null for a code that names no unit. */
export function mmPerUnit(code: number): number | null {
  return UNITS.get(code) ?? null;
}
