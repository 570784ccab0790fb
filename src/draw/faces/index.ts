/** The face of every kind. A kind without one does not compile. */
import type { Kind } from '../../parts/index.ts';
import { capacitorFace } from './capacitor.ts';
import type { Face } from './face.ts';
import { groundPointFace } from './ground-point.ts';
import { jackFace } from './jack.ts';
import { leverFace } from './lever.ts';
import { pickupFace } from './pickup.ts';
import { potFace } from './pot.ts';
import { resistorFace } from './resistor.ts';

export const faces: Readonly<Record<Kind, Face>> = {
  'single-coil': pickupFace,
  humbucker: pickupFace,
  pot: potFace,
  'lever-3': leverFace,
  'lever-5': leverFace,
  resistor: resistorFace,
  capacitor: capacitorFace,
  jack: jackFace,
  'ground-point': groundPointFace,
};
