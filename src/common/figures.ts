/** Figures as people read them: `4.42 kHz`, `+3.2 dB`, `−35 %`. The one home of signs. */

/** Hertz with three significant figures, zeros too, so that figures beside each other are equally exact. */
export function formatHertz(hertz: number): string {
  const rounded = Number(hertz.toPrecision(3));
  return rounded >= 1000 ? `${(rounded / 1000).toPrecision(3)} kHz` : `${rounded.toPrecision(3)} Hz`;
}

/** A frequency that somebody chose, as he would write it: `1 kHz`, `440 Hz`. */
export const plainHertz = (hertz: number): string => (hertz >= 1000 ? `${hertz / 1000} kHz` : `${hertz} Hz`);

/** A number with its sign, a true minus, and so many decimals; zero has no sign. */
export function formatSigned(value: number, decimals: number): string {
  const digits = Math.abs(value).toFixed(decimals);
  return Number(digits) === 0 ? digits : `${value < 0 ? '−' : '+'}${digits}`;
}

export const formatDecibels = (decibels: number): string => `${formatSigned(decibels, 1)} dB`;

/** `10,000`. */
export const formatCount = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, ',');

/**
 * A number with so many significant figures.
 *
 * @param round which way: `Math.floor` where it must not be printed too large
 */
export function roundedTo(value: number, figures: number, round: (value: number) => number): number {
  if (value === 0 || !Number.isFinite(value)) return value;
  const step = 10 ** (Math.floor(Math.log10(Math.abs(value))) - figures + 1);
  // What is a whole number of steps but for its last digits stays where it is.
  const steps = Number((value / step).toPrecision(12));
  return Number((round(steps) * step).toPrecision(figures));
}
