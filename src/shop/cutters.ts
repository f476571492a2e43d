/** Round cutters as shops stock them, smallest first, mm. Common practice, no source. */
export interface StockCutter {
  /** As a recipe writes it. */
  readonly name: string;
  readonly diameter: number;
}

const INCH = 25.4;

export const stockCutters: readonly StockCutter[] = [
  { name: '1/32in', diameter: INCH / 32 },
  { name: '1mm', diameter: 1 },
  { name: '1.5mm', diameter: 1.5 },
  { name: '1/16in', diameter: INCH / 16 },
  { name: '2mm', diameter: 2 },
  { name: '3/32in', diameter: (3 * INCH) / 32 },
  { name: '3mm', diameter: 3 },
  { name: '1/8in', diameter: INCH / 8 },
  { name: '4mm', diameter: 4 },
  { name: '3/16in', diameter: (3 * INCH) / 16 },
  { name: '6mm', diameter: 6 },
  { name: '1/4in', diameter: INCH / 4 },
];

/** The name as messages write it: "1/8 in". */
export function cutterText({ name }: StockCutter): string {
  return name.replace(/(mm|in)$/, ' $1');
}
