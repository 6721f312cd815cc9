import type { Auditor } from '../audit'
import { quote } from '../audit'

/**
 * Attribute dictionaries (Gerber Layer Format Specification, "attributes": TF, TA, TO, TD). An object carries those of its aperture and those of objects that hold
 * when it is made.
 */
export class Attributes {
  /** Of the file: name to values as written. */
  readonly file = new Map<string, string>()
  /** As `LayerObjects.attributeSets`. */
  readonly sets: string[][] = [[]]
  readonly #aperture = new Map<string, string>()
  readonly #object = new Map<string, string>()
  readonly #indexOfSet = new Map<string, number>([['', 0]])
  #lastAperture: readonly string[] = []
  #lastIndex: number | null = 0

  /** A statement TF, TA, TO or TD, without the percent signs. */
  take(text: string, line: number, column: number, auditor: Auditor): void {
    const kind = text.slice(0, 2)
    const body = text.slice(2).trim()
    const comma = body.indexOf(',')
    const name = comma < 0 ? body : body.slice(0, comma)
    if (kind !== 'TD' && name === '') {
      auditor.error(line, column, `${quote(text)} names no attribute`)
      return
    }
    const entry = decodeEscapes(body)
    if (kind === 'TF') this.file.set(name, comma < 0 ? '' : decodeEscapes(body.slice(comma + 1)))
    else if (kind === 'TA') this.#aperture.set(name, entry)
    else if (kind === 'TO') this.#object.set(name, entry)
    else if (name === '') {
      this.#aperture.clear()
      this.#object.clear()
    } else {
      this.#aperture.delete(name)
      this.#object.delete(name)
    }
    this.#lastIndex = null
  }

  /** What an aperture defined here carries. */
  ofAperture(): string[] {
    return [...this.#aperture.values()]
  }

  /** The index of the set that an object made here carries; a region has no aperture and takes what apertures defined here would. */
  setFor(aperture: readonly string[] | null): number {
    const ofAperture = aperture ?? this.ofAperture()
    if (this.#lastIndex !== null && aperture !== null && aperture === this.#lastAperture) return this.#lastIndex
    const set = [...ofAperture, ...this.#object.values()]
    const key = set.join('\n')
    let index = this.#indexOfSet.get(key)
    if (index === undefined) {
      index = this.sets.length
      this.sets.push(set)
      this.#indexOfSet.set(key, index)
    }
    this.#lastAperture = ofAperture
    this.#lastIndex = aperture === null ? null : index
    return index
  }
}

/** `\u00e9` stands for a sign outside ASCII. */
function decodeEscapes(text: string): string {
  return text.includes('\\u')
    ? text.replace(/\\u([0-9a-fA-F]{4})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)))
    : text
}
