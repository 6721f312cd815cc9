/** What a spreadsheet program may take for a formula or a command when it opens text. */
const BEGINS_LIKE_FORMULA = /^'*[=+\-@\t\r\n＝＋－＠]/

/**
 * Text that no spreadsheet program evaluates: an apostrophe goes before what begins like a formula (OWASP, CSV Injection).
 * Numbers are not text, and stay numbers.
 */
export function neutraliseText(text: string): string {
  return BEGINS_LIKE_FORMULA.test(text) ? `'${text}` : text
}

/** Takes back what `neutraliseText` did, so that what was exported is read as it was. */
export function readNeutralised(text: string): string {
  return text.startsWith("'") && BEGINS_LIKE_FORMULA.test(text.slice(1)) ? text.slice(1) : text
}
