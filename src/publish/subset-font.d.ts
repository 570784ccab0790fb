/** The package brings no types; this is what is used of it. */
declare module 'subset-font' {
  export default function subset(
    font: Buffer,
    text: string,
    options: { readonly targetFormat: 'woff2' },
  ): Promise<Buffer>;
}
