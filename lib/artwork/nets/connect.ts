import type { Islands } from '../copper/islands'
import { rimOf } from '../copper/rings'
import { UnionFind } from '../copper/union-find'

/** A copper layer, from the top down. */
export interface CopperLayer {
  readonly fileName: string
  readonly islands: Islands
}

export interface JoiningHole {
  readonly xNm: number
  readonly yNm: number
  readonly diameterNm: number
  /** First and last of the layers that it may join, counted from 0. */
  readonly span: readonly [from: number, to: number]
}

/** Which copper hangs together, through plated holes too. */
export class Connections {
  readonly #firsts: number[] = []
  readonly #joined: UnionFind

  constructor(
    private readonly layers: readonly CopperLayer[],
    holes: readonly JoiningHole[],
  ) {
    let count = 0
    for (const { islands } of layers) {
      this.#firsts.push(count)
      // Islands are named by one of their pieces.
      count += islands.pieceCount
    }
    this.#joined = new UnionFind(count)
    for (const hole of holes) {
      let first: number | null = null
      for (let layer = hole.span[0]; layer <= hole.span[1]; layer += 1) {
        for (const node of this.#nodesAt(layer, hole)) {
          if (first === null) first = node
          else this.#joined.join(first, node)
        }
      }
    }
  }

  /** What a place on a layer hangs together with; null where there is no copper. */
  at(layer: number, xNm: number, yNm: number): number | null {
    const island = this.layers[layer]?.islands.at(xNm, yNm) ?? null
    return island === null ? null : this.#joined.find((this.#firsts[layer] ?? 0) + island)
  }

  /** Copper that the wall of a hole meets. */
  #nodesAt(layer: number, { xNm, yNm, diameterNm }: JoiningHole): number[] {
    const islands = this.layers[layer]?.islands
    if (islands === undefined) return []
    const found = new Set<number>()
    for (const [x, y] of [[xNm, yNm] as const, ...rimOf(xNm, yNm, diameterNm / 2 + 1000)]) {
      const island = islands.at(x, y)
      if (island !== null) found.add((this.#firsts[layer] ?? 0) + island)
    }
    return [...found]
  }
}
