/** How well one ink stands out from another. */

/** Contrast ratio of two inks, 1 to 21 (WCAG 2.2, from memory). A text without ink has none. */
export function contrast(ink: string, ground: string): number {
  if (ink === 'none') return 1;
  const [a, b] = [luminance(ink), luminance(ground)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** Relative luminance of `#rrggbb` in sRGB. */
function luminance(ink: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) => {
    const share = Number.parseInt(ink.slice(i, i + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
