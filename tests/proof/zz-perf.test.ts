import { test } from 'vitest';
import { circle, dxfOf, rounded, starPoints, svgOf, type Chain } from '/work/main/tests/proof/drawn.js';
import { readSvg, readDxf, reach, gap, worstJoint, crossing, prove, difference } from '/work/main/src/proof/index.js';
const field=(n:number, c:number)=>{ const out:Chain[]=[]; const w=Math.ceil(Math.sqrt(n)); for(let i=0;i<n;i++){ out.push(rounded(starPoints(30*(i%w)+20.123,30*Math.floor(i/w)+20.3,5.5===0?0:6,12,6.5),2-c,2+c)); } return out; };
const time=(l:string,f:()=>unknown)=>{const t=performance.now();const v=f();console.log(l,(performance.now()-t).toFixed(1),JSON.stringify(v)?.slice(0,160))};
test('perf',()=>{
 for(const n of [4]){
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
  time('prove',()=>prove({pocketSvg:a,plugSvg:b,pocketDxf:ad,plugDxf:bd},{radius:1.8,clearance:0.08,carrier:false}));
 }
});
