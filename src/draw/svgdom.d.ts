/** The one function of svgdom that the drawing uses; the package ships no types. */
declare module 'svgdom' {
  export function createSVGWindow(): Window & { readonly document: Document };
}
