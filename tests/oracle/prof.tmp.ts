import { heardIn, sweep } from '../../src/analyse/response.ts';
import { makeNetlist } from '../../src/analyse/netlist.ts';
import { Solver } from '../../src/analyse/solver.ts';
import { logGrid } from '../../src/analyse/peak.ts';
import { sampleCircuit } from '../analyse/kits.ts';
const c = sampleCircuit('kestrel-hss');
const f = logGrid(400);
const med = (n:number, w:()=>void)=>{const a:number[]=[];for(let i=0;i<n;i++){const t=performance.now();w();a.push(performance.now()-t);}return a.sort((x,y)=>x-y)[n>>1]!.toFixed(3);};
for (let k=0;k<3;k++){
 console.log('grid', med(200,()=>{logGrid(400)}), 'netlist', med(200,()=>{for (const s of c.states) makeNetlist(c,s)}), 'heard', med(200,()=>{for (const s of c.states) heardIn(c,s)}));
 const hs=c.states.map(s=>heardIn(c,s)!); 
 console.log('sweep', med(200,()=>{for (const h of hs) sweep(h,[h.windings],f)}), 'solve', med(200,()=>{for (const h of hs) for (const x of f) h.solver.solve(x)}));
 for (const h of hs) console.log((h.solver as any).constructor.name, med(200,()=>{for (const x of f) h.solver.solve(x)}));
}
