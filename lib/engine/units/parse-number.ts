export type ParsedNumber =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly message: string }

const NUMBER_PATTERN = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d{1,3})?$/i

/** The sign as numbers are written here (`withMinus`), and as keyboards have it. */
export const withHyphen = (text: string): string => text.replaceAll('−', '-')

/**
 * Reads a typed number: digits with a decimal point, optionally with a power of ten, and groups of three separated by spaces (`2 000 000`,
 * `2e6`, `−40`). A comma is refused rather than guessed: it may part decimals or thousands.
 */
export function parseNumber(text: string): ParsedNumber {
  const trimmed = text.trim()
  if (trimmed === '') return { ok: false, message: 'Enter a number.' }
  const compact = withHyphen(trimmed).replace(/(?<=\d)[\s\u00a0\u202f](?=\d{3}(\D|$))/g, '')
  if (!NUMBER_PATTERN.test(compact)) {
    const message = compact.includes(',')
      ? `"${trimmed}" contains a comma: write decimals with a point.`
      : `"${trimmed}" is not a number.`
    return { ok: false, message }
  }
  const value = Number(compact)
  return Number.isFinite(value) ? { ok: true, value } : { ok: false, message: `"${trimmed}" is too large.` }
}
