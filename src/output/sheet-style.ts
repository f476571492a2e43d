/** Style of the printed page: A4 or Letter, readable in black and white. */
export const SHEET_STYLE = `
@page { margin: 12mm }
* { box-sizing: border-box }
body { font: 9.2pt/1.28 "Liberation Sans", Arial, Helvetica, sans-serif; color: #000; background: #fff; margin: 0 auto; padding: 0; max-width: 186mm }
@media screen { body { padding: 8mm 4mm } }
h1 { font-size: 17pt; margin: 0 0 1mm; overflow-wrap: anywhere }
h2 { font-size: 11pt; margin: 3.2mm 0 1mm; border-bottom: .4mm solid #000; break-after: avoid }
p { margin: 0 0 2mm }
.lead { margin-bottom: 2mm }
.figures { display: grid; grid-template-columns: 1fr 60mm; gap: 5mm }
.picture svg { width: 100%; height: auto; max-height: 112mm; display: block }
.parts { display: flex; flex-direction: column; gap: 2mm }
.wide { grid-template-columns: 1fr; gap: 2mm }
.wide .picture svg { max-height: 92mm }
.wide .parts { flex-direction: row; justify-content: space-between }
figure { margin: 0; break-inside: avoid }
figure svg { display: block }
figcaption { font-size: 8.5pt }
.find { float: right; width: 84mm; margin: 0 0 2mm 5mm }
.find svg { width: 100%; height: auto; max-height: 90mm }
.section { max-width: 100%; height: auto; display: block; margin: 0 auto }
section { break-inside: auto }
.keep { break-inside: avoid }
.numbers { display: grid; grid-template-columns: 1fr 1fr; gap: 0 6mm; font-size: 8.6pt; break-inside: avoid }
table { border-collapse: collapse; align-self: start; font-variant-numeric: tabular-nums }
th, td { text-align: left; vertical-align: top; padding: .6mm 2mm .6mm 0; border-bottom: .15mm solid #888 }
th { font-weight: normal; width: 33mm; color: #333 }
.fit { width: 100% }
.fit th { width: 24mm; color: #000; font-weight: bold }
.fit small { line-height: 1.2; display: inline-block }
tr { break-inside: avoid }
ul, ol { margin: 0; padding-left: 5.5mm }
li { margin-bottom: .5mm; break-inside: avoid; overflow-wrap: anywhere }
small { color: #444; font-size: 8pt }
`.trim();
