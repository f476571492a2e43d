import { test } from 'vitest';
import { circle, moved, dxfOf, rounded, starPoints, svgOf, type Chain } from '/work/main/tests/proof/drawn.js';
import { readSvg, readDxf, reach, gap, worstJoint, crossing, prove, difference } from '/work/main/src/proof/index.js';
const N=6; const ap=(()=>{const a=Math.PI/N;const x=12,bx=6.5*Math.cos(a),by=6.5*Math.sin(a);return Math.abs(x*by)/Math.hypot(x-bx,by)})(); const k=(c:number)=>(ap-c)/ap;
const field=(n:number, c:number)=>{ const out:Chain[]=[]; const w=Math.ceil(Math.sqrt(n)); for(let i=0;i<n;i++){ out.push(rounded(starPoints(30*(i%w)+20.123,30*Math.floor(i/w)+20.3,N,12*k(c),6.5*k(c)),2-c,2+c)); } return out; };
const time=(l:string,f:()=>unknown)=>{const t=performance.now();const v=f();console.log(l,(performance.now()-t).toFixed(1),JSON.stringify(v)?.slice(0,160))};
test('perf',()=>{
 for(const n of [1000,1000,1000]){
  const sheet={unit:'mm' as const,width:4000,height:4000};
  const a=svgOf('pocket',field(n,0),sheet), b=svgOf('plug',field(n,0.08),sheet);
  let p:any,q:any;
  time('read',()=>{p=readSvg(a);q=readSvg(b);return p.edges.count});
  const ad=dxfOf('pocket',field(n,0)), bd=dxfOf('plug',field(n,0.08));
  time('readDxf',()=>{const d=readDxf(ad);return difference(p,d)});
  time('index',()=>{p.index.tree;q.index.tree});
  time('nest',()=>[p.nesting.parts,q.nesting.parts]);
  time('reach in',()=>reach(p,'inside',3.6));
  time('reach out',()=>reach(q,'outside',3.6));
  if(n<5000){time('reach in nocap',()=>reach(p,'inside'));
  time('reach out nocap',()=>reach(q,'outside'));}
  time('joint',()=>[worstJoint(p),worstJoint(q)]);
  time('cross',()=>[crossing(p),crossing(q)]);
  time('gap',()=>gap(p,q));
  if(n<2000) for (const [dx,dy] of [[0.01,0],[0.2,0.1],[15,3]]) { const sh=readSvg(svgOf('plug',field(n,0.08).map(c=>moved(c,dx,dy)),sheet)); sh.index; time('gap shifted '+dx,()=>gap(p,sh)); }
 {const sh=readSvg(svgOf('plug',field(n,0.08).slice(0,-1),sheet));time('gap missing',()=>gap(p,sh));}
  time('prove',()=>prove({pocketSvg:a,plugSvg:b,pocketDxf:ad,plugDxf:bd},{radius:1.8,clearance:0.08,carrier:false}));
 }
});
