import { describe, expect, it } from 'vitest'
import {
  countAlong,
  countBlocks,
  countGrid,
  type GridBlock,
  packBothWays,
  type RectangleTask,
} from '@/lib/fabrication/panel'
import { makeRandom } from './shapes'

/** Most rectangles of w x h or h x w on a board of whole squares, by trying every place; for small boards only. */
function packExhaustively(width: number, height: number, w: number, h: number): number {
  const taken: boolean[] = Array.from({ length: width * height }, () => false)
  let best = 0
  const place = (from: number, count: number, unused: number): void => {
    best = Math.max(best, count)
    if (count + Math.floor(unused / (w * h)) <= best) return
    let cell = from
    while (cell < taken.length && taken[cell] === true) cell += 1
    if (cell >= taken.length) return
    const [x, y] = [cell % width, Math.floor(cell / width)]
    for (const [a, b] of w === h
      ? [[w, h]]
      : [
          [w, h],
          [h, w],
        ]) {
      const cells = listCells(x, y, a ?? 0, b ?? 0)
      if (cells === null) continue
      for (const each of cells) taken[each] = true
      place(cell + 1, count + 1, unused - w * h)
      for (const each of cells) taken[each] = false
    }
    taken[cell] = true
    place(cell + 1, count, unused - 1)
    taken[cell] = false
  }
  const listCells = (x: number, y: number, a: number, b: number): number[] | null => {
    if (x + a > width || y + b > height) return null
    const cells: number[] = []
    for (let row = y; row < y + b; row += 1) {
      for (let column = x; column < x + a; column += 1) {
        const cell = row * width + column
        if (taken[cell] === true) return null
        cells.push(cell)
      }
    }
    return cells
  }
  place(0, 0, width * height)
  return best
}

const makeTask = (width: number, height: number, w: number, h: number, spacingUm = 0): RectangleTask => ({
  usableWidthUm: width,
  usableHeightUm: height,
  partWidthUm: w,
  partHeightUm: h,
  spacingUm,
})

describe('rectangles in both orientations', () => {
  it('are never more than exhaustive search finds, and never fewer than the plain grids', () => {
    const random = makeRandom(7)
    let asMany = 0
    const rounds = 60
    for (let round = 0; round < rounds; round += 1) {
      const whole = (low: number, high: number) => low + Math.floor(random() * (high - low + 1))
      const [width, height, w, h] = [whole(4, 8), whole(4, 8), whole(2, 4), whole(1, 3)]
      const task = makeTask(width, height, w, h)
      const count = countBlocks(packBothWays(task))
      const most = packExhaustively(width, height, w, h)
      expect(count).toBeLessThanOrEqual(most)
      expect(count).toBeGreaterThanOrEqual(Math.max(countGrid(task, false).count, countGrid(task, true).count))
      if (count === most) asMany += 1
    }
    expect(asMany).toBe(rounds)
  })

  it('keep their blocks apart and inside', () => {
    const random = makeRandom(11)
    for (let round = 0; round < 200; round += 1) {
      const task = makeTask(
        Math.floor(300 + 400 * random()),
        Math.floor(300 + 400 * random()),
        Math.floor(20 + 80 * random()),
        Math.floor(15 + 60 * random()),
        Math.floor(8 * random()),
      )
      const boxes = packBothWays(task).map((block) => toBox(block, task))
      for (const [index, box] of boxes.entries()) {
        expect(box.x0 >= 0 && box.y0 >= 0 && box.x1 <= task.usableWidthUm && box.y1 <= task.usableHeightUm).toBe(true)
        for (const other of boxes.slice(index + 1)) {
          const gap = Math.max(other.x0 - box.x1, box.x0 - other.x1, other.y0 - box.y1, box.y0 - other.y1)
          expect(gap).toBeGreaterThanOrEqual(task.spacingUm)
        }
      }
    }
  })
})

function toBox({ xUm, yUm, columns, rows, turned }: GridBlock, task: RectangleTask) {
  const [a, b] = turned ? [task.partHeightUm, task.partWidthUm] : [task.partWidthUm, task.partHeightUm]
  return {
    x0: xUm,
    y0: yUm,
    x1: xUm + columns * (a + task.spacingUm) - task.spacingUm,
    y1: yUm + rows * (b + task.spacingUm) - task.spacingUm,
  }
}

describe('parts along a line', () => {
  it('fit flush, and one fewer where a micrometre is missing', () => {
    expect(countAlong(99_900, 9_900, 100)).toBe(10)
    expect(countAlong(99_899, 9_900, 100)).toBe(9)
    expect(countAlong(9_899, 9_900, 100)).toBe(0)
  })

  it('refuses what is no whole micrometre or no length, by name', () => {
    expect(() => countAlong(0.5, 1, 0)).toThrow(/usableUm must be a whole number/)
    expect(() => countAlong(10, 0, 0)).toThrow(/must have a length/)
  })
})
