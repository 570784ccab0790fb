/**
 * Kits whose words would be run by a page that pasted them as they are: each ends another kind of thing that a writer of HTML, SVG or JSON
 * may be in the middle of. What would run sets `pwned`. The ways are those of common practice, no source.
 */

/** For a label: at most 30 letters. */
const SHORT = [
  '<img src=x onerror=pwned=1>',
  '"><svg onload=pwned=1>',
  '</script><script>pwned=1//',
  "' autofocus onfocus=pwned=1 '",
  ']]><script>pwned=1</script>',
  'javascript:pwned=1',
  '&lt;img src onerror=pwned=1&gt;'.slice(0, 30),
  '--><script>pwned=1</script>',
  '{{pwned=1}}`pwned=1`',
] as const;

/** For a title: at most 80. */
const LONG = [
  '</title></desc></svg><script>globalThis.pwned = 1</script>',
  '</textarea></style></template><img src="x" onerror="globalThis.pwned = 1">',
  '"}</script><script>globalThis.pwned = 1</script><!--',
] as const;

/** Descriptions of kits, by id: each is sound but for its words. */
export const hostileKits: ReadonlyMap<string, unknown> = new Map(
  LONG.map((title, n) => {
    const label = (at: number): string => SHORT[(n * 3 + at) % SHORT.length] ?? '';
    return [
      `hostile-${n + 1}`,
      {
        kit: `hostile-${n + 1}`,
        title,
        about: `${title} ${SHORT.slice(n * 3, n * 3 + 5).join(' ')}`,
        parts: {
          neck: { kind: 'single-coil', label: label(0), resistance: '5.7k' },
          bridge: { kind: 'humbucker', label: label(1), resistance: '8.4k' },
          selector: { kind: 'lever-3', label: label(2) },
          volume: { kind: 'pot', label: label(3), value: '500k' },
          pad: { kind: 'resistor', label: label(4), value: '470k' },
          output: { kind: 'jack', label: label(5) },
        },
        joints: [
          'neck.hot > selector.B3',
          'bridge.hot > selector.A1',
          { jumper: 'selector.A1 > selector.A2' },
          { jumper: 'selector.B2 > selector.B3' },
          { jumper: 'selector.A0 > selector.B0' },
          'selector.B0 > volume.3',
          'volume.2 > output.tip',
          { bend: 'volume.1 > volume.case' },
          'neck.ground > volume.case',
          'bridge.ground > volume.case',
          'output.sleeve > volume.case',
          { leg: 'pad.1 > selector.A0' },
          { leg: 'pad.2 > volume.case' },
        ],
      },
    ];
  }),
);
