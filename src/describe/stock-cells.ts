/** What a cell of a spreadsheet says: numbers in the reader's country's way, yes and no, prices with their currency. */

/** A value, or why there is none. */
type Read = { readonly value: unknown } | { readonly why: string; readonly remedy: string };

/** Columns whose text is a name or a note, and is left as it is. */
const TEXTS = ['code', 'replaced-by', 'supplier'];

const SPREADSHEET_ERROR =
  /^#(REF|N\/A|NAME\?|VALUE|DIV\/0|NUM|NULL|SPILL|FIELD|CALC)\b|^#(REF|VALUE|NUM|NULL)!/i;
/** A number, with what stands behind it: `4,7k`, `470.000`, `5 %`. */
const NUMBER = /^([+-]?)([\d.,]+)(?:[eE]([+-]?\d+))?\s*(\D*)$/;

/**
 * @param column the field it is for
 * @param delimiter what parts the cells: where it is a comma, the decimal sign is a point unless the cell can be read in one way only
 */
export function readCell(column: string, text: string, delimiter: string): Read {
  const plain = text.replaceAll('\u00A0', ' ').replaceAll('\u202F', ' ').trim();
  if (/^[=@]/.test(plain))
    return {
      why: `“${plain}” is a formula, not a value`,
      remedy: 'In the spreadsheet paste it as a value, and export again.',
    };
  if (SPREADSHEET_ERROR.test(plain))
    return {
      why: `“${plain}” is an error of the spreadsheet`,
      remedy: 'Correct the formula of this cell in the spreadsheet, and export again.',
    };
  if (TEXTS.includes(column)) return { value: plain };
  const bare =
    column === 'price' ? plain.replace(/^(?:\p{Sc}|[A-Z]{3})\s*|\s*(?:\p{Sc}|[A-Z]{3})$/gu, '') : plain;
  const number = NUMBER.exec(bare);
  if (number) return readNumber(number, delimiter);
  const word = bare.toLowerCase();
  if (column === 'kind') return { value: word.replace(/[\s_]+/g, '-') };
  if (['true', 'yes', 'y'].includes(word)) return { value: true };
  if (['false', 'no', 'n'].includes(word)) return { value: false };
  // Choices are in small letters; a spreadsheet begins a cell with a capital.
  return { value: /^[a-z][a-z\s_-]*$/i.test(bare) ? word.replace(/[\s_]+/g, '-') : bare };
}

/** With a decimal point, and as a number where nothing stands behind it. */
function readNumber(found: RegExpExecArray, delimiter: string): Read {
  const [written, sign = '', digits = '', exponent, behind = ''] = found;
  const decimal = delimiter === ',' ? '.' : ',';
  const other = decimal === '.' ? ',' : '.';
  const signs = digits.replace(/\d/g, '');
  // Three digits behind the sign that is not the decimal one: a thousand of somebody, or a thousandth.
  const grouped = new RegExp(`^[1-9]\\d{0,2}(\\${other}\\d{3})+$`).test(digits) && behind === '' && !exponent;
  if (signs.length > 1 || grouped)
    return {
      why: `“${written}” can be read in two ways: a separator between thousands, or a decimal sign`,
      remedy: `Write it without separators between thousands, such as 470000, 470k or 0${decimal}5.`,
    };
  const text = `${sign}${digits.replace(',', '.')}${exponent === undefined ? '' : `e${exponent}`}`;
  const value = Number(text);
  return { value: behind === '' && Number.isFinite(value) ? value : `${text}${behind}` };
}
