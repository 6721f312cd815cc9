import type { MissingInput, Place } from '../results'

/** One fact as two places of the design or its papers state it. */
export interface WrittenTwice {
  /** In words, at the start of a sentence: `Inside radius of Mirror hinge`. */
  readonly fact: string
  readonly one: Statement
  readonly other: Statement
  readonly agrees: boolean
  /**
   * `fields` are typed into fields that mean the same; `words` were read out of a name, a note or a file's name, which may speak of something
   * else; `sizes` may both hold, where the part is not as most are.
   */
  readonly readFrom: 'fields' | 'words' | 'sizes'
  readonly places: readonly Place[]
}

export interface Statement {
  /** Where it stands: `the bend's fields`, `its note`. */
  readonly where: string
  /** What it says there, with its unit: `8 mm`. */
  readonly says: string
  /** Field of the design to go to; absent for a file. */
  readonly path?: MissingInput['path']
}
