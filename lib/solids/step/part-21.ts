import 'server-only'
import { roundTo } from '@/lib/engine/numerics'

/** A file of ISO 10303-21 (clear text encoding of the exchange structure): entities in the order in which they were added. */
export class StepFile {
  readonly #lines: string[] = []
  readonly #known = new Map<string, string>()

  /** @returns its name, as others refer to it */
  add(text: string): string {
    const name = `#${this.#lines.length + 1}`
    this.#lines.push(`${name}=${text};`)
    return name
  }

  /** One entity for all places that say the same: points and directions that bodies share. */
  once(text: string): string {
    const known = this.#known.get(text)
    if (known !== undefined) return known
    const name = this.add(text)
    this.#known.set(text, name)
    return name
  }

  /**
   * @param at  ISO 8601: the moment that the content is from, so that equal bodies give equal bytes
   */
  write({ name, at, schema, system }: { name: string; at: string; schema: string; system: string }): string {
    const texts = [name, at, system].map(stepText)
    return [
      'ISO-10303-21;',
      'HEADER;',
      "FILE_DESCRIPTION((''),'2;1');",
      `FILE_NAME(${texts[0]},${texts[1]},(''),(''),${texts[2]},${texts[2]},'');`,
      `FILE_SCHEMA((${stepText(schema)}));`,
      'ENDSEC;',
      'DATA;',
      ...this.#lines,
      'ENDSEC;',
      'END-ISO-10303-21;',
      '',
    ].join('\n')
  }
}

/** Digits after the point: a thousandth of a nanometre, below all that was computed. */
const DIGITS = 12

/** A real always has its point. */
export function stepReal(value: number): string {
  const [mantissa = '0', exponent] = String(roundTo(value, DIGITS) + 0).split('e')
  const real = mantissa.includes('.') ? mantissa : `${mantissa}.`
  return exponent === undefined ? real : `${real}E${exponent.replace('+', '')}`
}

/** Quotes and backslashes are doubled; what is not ASCII goes by its UTF-16 code units (10303-21, 6.4.3). */
export function stepText(text: string): string {
  const encoded = text
    .replaceAll('\\', '\\\\')
    .replaceAll("'", "''")
    .replaceAll(/[^\x20-\x7e]+/g, (part) => {
      const units = Array.from({ length: part.length }, (_, at) =>
        part.charCodeAt(at).toString(16).toUpperCase().padStart(4, '0'),
      )
      return `\\X2\\${units.join('')}\\X0\\`
    })
  return `'${encoded}'`
}

export const stepList = (names: readonly string[]): string => `(${names.join(',')})`
