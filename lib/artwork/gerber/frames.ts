import { ApertureUses } from '../apertures/uses'
import type { Auditor } from '../audit'
import { ObjectBuilder } from '../objects/object-builder'
import { type Placement, UNMOVED } from '../objects/placement'

/** Blocks within blocks: deeper than any generator goes. */
const DEEPEST = 20

interface Frame {
  readonly kind: 'file' | 'block' | 'repeat'
  readonly builder: ObjectBuilder
  readonly line: number
  readonly code: number
  readonly countX: number
  readonly countY: number
  readonly stepXNm: number
  readonly stepYNm: number
  /** Refused: what stands inside is read and not kept. */
  readonly isRefused: boolean
}

/**
 * Where objects go: into the file, into the block or into the repeat that is open. Repeats and blocks are unfolded, and refused by their product before
 * anything is made.
 */
export class Frames {
  readonly uses = new ApertureUses()
  readonly blocks = new Map<number, ObjectBuilder>()
  readonly #stack: Frame[]
  /** Objects of all builders together. */
  #made = 0

  constructor(
    private readonly auditor: Auditor,
    private readonly mostObjects: number,
  ) {
    this.#stack = [makeFrame('file', 0)]
  }

  get builder(): ObjectBuilder {
    return this.#top.builder
  }

  get #top(): Frame {
    return this.#stack.at(-1) as Frame
  }

  openBlock(code: number, line: number, column: number): void {
    const isRefused = this.#stack.length > DEEPEST || this.#top.isRefused
    if (this.#stack.length > DEEPEST + 1000) return
    if (isRefused) this.auditor.error(line, column, `blocks stand in blocks more than ${DEEPEST} deep: not drawn`)
    this.#stack.push({ ...makeFrame('block', line), code, isRefused })
  }

  closeBlock(line: number, column: number): void {
    this.closeRepeat(line, column, true)
    const frame = this.#top
    if (frame.kind !== 'block') {
      this.auditor.error(line, column, 'a block aperture ends that did not begin')
      return
    }
    this.#stack.pop()
    if (!frame.isRefused) this.blocks.set(frame.code, frame.builder)
  }

  openRepeat(counts: readonly [number, number], steps: readonly [number, number], line: number, column: number): void {
    this.closeRepeat(line, column, true)
    const [countX, countY] = counts
    const [stepXNm, stepYNm] = steps
    if (countX === 1 && countY === 1) return
    this.#stack.push({ ...makeFrame('repeat', line), countX, countY, stepXNm, stepYNm, isRefused: this.#top.isRefused })
  }

  /** @param isImplied  whether something else ended it, so that there may be none */
  closeRepeat(line: number, column: number, isImplied: boolean): void {
    const frame = this.#top
    if (frame.kind !== 'repeat') {
      if (!isImplied) this.auditor.noteOnce(line, column, 'a step and repeat ends that did not begin')
      return
    }
    this.#stack.pop()
    if (frame.isRefused) return
    const { countX, countY, stepXNm, stepYNm } = frame
    const times = countX * countY
    const what = `${countX} by ${countY} repeats of ${frame.builder.count} objects`
    if (!this.#mayAdd(frame.builder, times, line, column, what)) return
    // Upwards first, then to the right: where clear objects overlap, the order shows.
    for (let atX = 0; atX < countX; atX += 1) {
      for (let atY = 0; atY < countY; atY += 1) {
        const placement = { ...UNMOVED, xNm: Math.round(atX * stepXNm), yNm: Math.round(atY * stepYNm) }
        this.#place(frame.builder, placement, frame.line, column)
      }
    }
  }

  /** Flashes a block aperture; false where there is none of that code. */
  flashBlock(block: ObjectBuilder, placement: Placement, line: number, column: number): void {
    if (this.#top.isRefused) return
    if (!this.#mayAdd(block, 1, line, column, `a block of ${block.count} objects`)) return
    this.#place(block, placement, line, column)
  }

  /** Whether one more object may be made; told once where not. */
  mayAddOne(line: number, column: number): boolean {
    if (this.#top.isRefused) return false
    if (this.#made >= this.mostObjects) {
      this.auditor.noteOnce(line, column, this.#tooMany)
      return false
    }
    this.#made += 1
    return true
  }

  /** Everything that the file draws, moved as its header says. */
  finish(whole: Placement | null, line: number): ObjectBuilder {
    this.closeRepeat(line, 1, true)
    while (this.#stack.length > 1) {
      const { kind, line: begun } = this.#top
      if (kind === 'block') this.auditor.error(begun, 1, 'this block aperture has no end: what it holds is not drawn')
      this.#stack.pop()
    }
    const { builder } = this.#top
    if (whole === null) return builder
    const moved = new ObjectBuilder()
    moved.place(builder, whole, this.uses.placed, 0)
    return moved
  }

  get #tooMany(): string {
    return `the file draws more than ${this.mostObjects} objects: the rest is not read`
  }

  #mayAdd(source: ObjectBuilder, times: number, line: number, column: number, what: string): boolean {
    const more = (source.count + source.cornerCount) * times
    if (this.#made + more <= this.mostObjects) {
      this.#made += more
      return true
    }
    this.auditor.error(line, column, `${what} would make more than ${this.mostObjects} objects in this file: not drawn`)
    return false
  }

  #place(source: ObjectBuilder, placement: Placement, line: number, column: number): void {
    const { builder } = this.#top
    builder.place(source, placement, this.uses.placed, line)
    if (builder.hasLeftOut) {
      builder.hasLeftOut = false
      this.auditor.error(line, column, 'repeats or blocks reach beyond 2 m: what lies there is left out')
    }
  }
}

function makeFrame(kind: Frame['kind'], line: number): Frame {
  const none = { code: 0, countX: 1, countY: 1, stepXNm: 0, stepYNm: 0, isRefused: false }
  return { kind, builder: new ObjectBuilder(), line, ...none }
}
