/** Style of the printed page: A4 or Letter, readable in black and white. */
export const SHEET_STYLE = `
@page { margin: 12mm }
* { box-sizing: border-box }
body { font: 10pt/1.35 "Liberation Sans", Arial, Helvetica, sans-serif; color: #000; background: #fff; margin: 0 auto; padding: 0; max-width: 186mm }
@media screen { body { padding: 8mm 4mm } }
h1 { font-size: 19pt; margin: 0 0 1mm; overflow-wrap: anywhere }
h2 { font-size: 11.5pt; margin: 5mm 0 1.5mm; border-bottom: .4mm solid #000; break-after: avoid }
p { margin: 0 0 2mm }
.lead { margin-bottom: 3mm }
.figures { display: flex; flex-wrap: wrap; gap: 5mm; align-items: flex-start; justify-content: space-between }
.picture { flex: 1 1 96mm; max-width: 112mm }
.picture svg { width: 100%; height: auto; max-height: 140mm; display: block }
.parts { flex: 0 1 auto; display: flex; flex-direction: column; gap: 2mm }
.wide .parts { flex-direction: row; width: 100%; justify-content: space-around }
.wide .picture { flex-basis: 100%; max-width: none }
figure { margin: 0; break-inside: avoid }
figure svg { display: block }
figcaption { font-size: 8.5pt }
.section { width: 100%; height: auto; display: block; font-family: inherit }
section { break-inside: auto }
.keep { break-inside: avoid }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums }
th, td { text-align: left; vertical-align: top; padding: .6mm 2mm .6mm 0; border-bottom: .15mm solid #888 }
th { font-weight: normal; width: 52mm; color: #333 }
tr { break-inside: avoid }
ul, ol { margin: 0; padding-left: 5.5mm }
li { margin-bottom: .8mm; break-inside: avoid; overflow-wrap: anywhere }
small { color: #444; font-size: 8pt }
`.trim();
