import { findCrossing, getAreaUm2, type Polygon } from '@/lib/geometry'

/** Vertices in millimetres as whole micrometres. */
export function mm(...vertices: readonly (readonly [number, number])[]): Polygon {
  return vertices.map(([x, y]) => [Math.round(x * 1000), Math.round(y * 1000)])
}

export const L_SHAPE = mm([0, 0], [80, 0], [80, 20], [20, 20], [20, 60], [0, 60])
export const U_SHAPE = mm([0, 0], [90, 0], [90, 60], [70, 60], [70, 20], [20, 20], [20, 60], [0, 60])
export const Z_SHAPE = mm([0, 0], [50, 0], [50, 30], [80, 30], [80, 50], [30, 50], [30, 20], [0, 20])
export const HOOK = mm([0, 0], [100, 0], [100, 15], [15, 15], [15, 80], [60, 80], [60, 95], [0, 95])
export const NEEDLE = mm([0, 0], [120, 38], [118, 40])

/** Numbers from 0 to 1 that are the same on every run (Mulberry32, public domain). */
export function makeRandom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

/** A star-like polygon round 0, 0: simple, as its directions grow; spiky, thin or round as its radii say. */
export function makeStar(vertexCount: number, radiusMm: (index: number) => number, stretch = 1): Polygon {
  return Array.from({ length: vertexCount }, (_, index) => {
    const angle = (2 * Math.PI * index) / vertexCount
    const radiusUm = radiusMm(index) * 1000
    return [Math.round(radiusUm * Math.cos(angle)), Math.round(stretch * radiusUm * Math.sin(angle))]
  })
}

/** A random simple polygon: a star, or an L, U, comb or bar of random measures. */
export function makeRandomPart(random: () => number): Polygon {
  for (;;) {
    const part = proposePart(random)
    if (getAreaUm2(part) > 0 && findCrossing(part) === null) return part
  }
}

function proposePart(random: () => number): Polygon {
  const between = (low: number, high: number): number => low + (high - low) * random()
  const [w, h, t] = [between(25, 110), between(25, 110), between(4, 11)]
  switch (Math.floor(random() * 6)) {
    case 0:
      return makeStar(3 + Math.floor(random() * 38), () => between(8, 45), between(0.3, 1))
    case 1:
      return mm([0, 0], [w, 0], [w, t], [t, t], [t, h], [0, h])
    case 2:
      return mm([0, 0], [w, 0], [w, h], [w - t, h], [w - t, t], [t, t], [t, h], [0, h])
    case 3:
      return mm([0, 0], [w, between(0, h)], [w, h], [between(1, w - 1), h + t])
    case 4: {
      const x = w / 5
      return mm(
        [0, 0],
        [w, 0],
        [w, h],
        [4 * x, h],
        [4 * x, t],
        [3 * x, t],
        [3 * x, h],
        [2 * x, h],
        [2 * x, t],
        [x, t],
        [x, h],
        [0, h],
      )
    }
    default:
      return mm([0, 0], [w, 0.4 * h], [w - 1, 0.4 * h + between(1, 3)], [between(-1, -0.5), between(1, 3)])
  }
}
