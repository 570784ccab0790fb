/** Every part kind, a line each. To add one is to add its file and its line here. */
export { capacitor } from './capacitor.ts';
export { groundPoint } from './ground-point.ts';
export { humbucker } from './humbucker.ts';
export { jack } from './jack.ts';
export { lever3 } from './lever-3.ts';
export { lever5 } from './lever-5.ts';
export { pot } from './pot.ts';
export { pushPull } from './push-pull.ts';
export { resistor } from './resistor.ts';
export { singleCoil } from './single-coil.ts';
export { stereoJack } from './stereo-jack.ts';
export { ownSwitch } from './switch.ts';
