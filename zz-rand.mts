import { writeFileSync, mkdirSync } from 'node:fs';
import fc from 'fast-check';
import { stringify } from 'yaml';
import { circuits } from './tests/random/circuits.ts';
import { kitFromValue } from './src/describe/read.ts';
import { findFaults } from './src/circuit/faults.ts';
import { draw } from './src/pipeline.ts';
import { inspect, printFinding } from './src/inspect/index.ts';
import { arrangementNames, findArrangement } from './src/publish/layouts.ts';
mkdirSync('/tmp/lint-cases',{recursive:true});
const n=Number(process.argv[2]??60); const names=arrangementNames();
let td=0,ti=0; const rules={}; let bad=0;
for (const [i,d] of fc.sample(circuits,{seed:60757,numRuns:n}).entries()) {
  const {kit,problems}=kitFromValue(d,'random.ts');
  const f=[...problems, ...(kit?findFaults(kit):[])];
  if (!kit||f.length){ console.log(i,'INVALID',JSON.stringify(f).slice(0,500)); continue; }
  const a=names[i%5<3?0:i%5-2]; const arr=findArrangement(a);
  try { const t0=performance.now(); const svg=await draw(kit,arr); td+=performance.now()-t0; const t1=performance.now(); const r=inspect(svg,kit); ti+=performance.now()-t1;
    for (const x of r) rules[x.rule]=(rules[x.rule]??0)+1;
    if (r.length) { bad++; writeFileSync(`/tmp/lint-cases/${i}-${a}.yaml`, stringify(d)); writeFileSync(`/tmp/lint-cases/${i}-${a}.svg`,svg); console.log(i,a,r.map(printFinding).slice(0,4).join('\n      ')); }
  } catch(e) { writeFileSync(`/tmp/lint-cases/${i}-${a}-throws.yaml`, stringify(d)); console.log(i,a,'THROWS',String(e)); }
}
console.log({td,ti,bad,rules});
