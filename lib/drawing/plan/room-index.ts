export interface Room {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Boxes by the cells that they touch, so that a view of thousands of holes asks only those near a place. */
export interface RoomIndex {
  readonly add: (box: Room) => void
  /** Does a box lie over any of those added? Boxes that only touch do not. */
  readonly isMet: (box: Room) => boolean
}

/** @param cell  side of a cell, in the picture's measure; about the size of a label */
export function makeRoomIndex(cell: number): RoomIndex {
  const cells = new Map<string, Room[]>()
  const keysOf = (box: Room): string[] => {
    const keys: string[] = []
    for (let i = Math.floor(box.left / cell); i <= Math.floor(box.right / cell); i += 1) {
      for (let j = Math.floor(box.top / cell); j <= Math.floor(box.bottom / cell); j += 1) keys.push(`${i},${j}`)
    }
    return keys
  }
  return {
    add: (box) => {
      for (const key of keysOf(box)) {
        const own = cells.get(key)
        if (own === undefined) cells.set(key, [box])
        else own.push(box)
      }
    },
    isMet: (box) => keysOf(box).some((key) => cells.get(key)?.some((other) => meets(box, other)) === true),
  }
}

const meets = (one: Room, other: Room) =>
  one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom
