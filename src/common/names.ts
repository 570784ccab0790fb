/** How ids and names may be written. They name files and lead ids in drawings, so that both allow the same letters. */

/** Lower-case letters and digits in words joined by single hyphens, a letter first. */
export const ID = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/;
/** Characters of a kit's id. */
export const ID_LONGEST = 40;
/** Characters of a part's name. */
export const NAME_LONGEST = 24;
