import { measureText } from '../text-metrics'
import type { Point } from './frame'
import { makeRoomIndex, type Room, type RoomIndex } from './room-index'

export interface WantedLabel {
  readonly text: string
  /** What it names. */
  readonly at: Point
  /** It may stand on its place, as the name of an area does. */
  readonly isOnPlace?: boolean
}

export interface SetLabel extends WantedLabel {
  /** Left end of the baseline. */
  readonly x: number
  readonly y: number
  readonly box: Room
  /** It stands so far off that a line leads to what it names. */
  readonly isLed: boolean
}

const DIRECTIONS = 16
/** Distances at which a place is looked for, in type sizes. */
const REACHES_EM = [0.9, 1.6, 2.6, 4, 6, 8.5, 12, 16, 21, 27]
const LED_EM = 1.8

/**
 * Places for short labels, none over another, over what is taken (the symbols that they name), or outside of the room: each takes the nearest free place in turn.
 * What finds none is handed back, so that the sheet can say so; it is never printed over something.
 */
export function setLabels(
  wanted: readonly WantedLabel[],
  room: Room,
  taken: readonly Room[],
  fontSize: number,
): { readonly set: readonly SetLabel[]; readonly left: readonly WantedLabel[] } {
  const boxes = makeRoomIndex(2 * fontSize)
  for (const box of taken) boxes.add(box)
  const set: SetLabel[] = []
  const left: WantedLabel[] = []
  for (const label of wanted) {
    const place = findPlace(label, room, boxes, fontSize)
    if (place === null) {
      left.push(label)
      continue
    }
    boxes.add(place.box)
    set.push(place)
  }
  return { set, left }
}

function findPlace(label: WantedLabel, room: Room, boxes: RoomIndex, fontSize: number): SetLabel | null {
  const width = measureText(label.text, fontSize)
  const own = boxAround(label.at, width, fontSize)
  if (label.isOnPlace === true && isWithin(own, room) && !boxes.isMet(own)) {
    return { ...label, x: label.at[0] - width / 2, y: label.at[1] + 0.26 * fontSize, box: own, isLed: false }
  }
  for (const em of REACHES_EM) {
    for (let turn = 0; turn < DIRECTIONS; turn += 1) {
      const rad = (2 * Math.PI * turn) / DIRECTIONS
      const [dx, dy] = [Math.cos(rad), Math.sin(rad)]
      // Half of the text lies between its middle and what it names.
      const middle: Point = [
        label.at[0] + dx * (em * fontSize + width / 2),
        label.at[1] + dy * (em * fontSize + fontSize / 2),
      ]
      const box = boxAround(middle, width, fontSize)
      if (!isWithin(box, room) || boxes.isMet(box)) continue
      return { ...label, x: middle[0] - width / 2, y: middle[1] + 0.26 * fontSize, box, isLed: em > LED_EM }
    }
  }
  return null
}

/** Descenders and capitals of the faces in use, with a little air. */
const boxAround = ([x, y]: Point, width: number, fontSize: number): Room => ({
  left: x - width / 2 - 0.15 * fontSize,
  right: x + width / 2 + 0.15 * fontSize,
  top: y - 0.6 * fontSize,
  bottom: y + 0.6 * fontSize,
})

const isWithin = (box: Room, room: Room) =>
  box.left >= room.left && box.right <= room.right && box.top >= room.top && box.bottom <= room.bottom
