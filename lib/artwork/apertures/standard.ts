import type { AperturePiece } from './aperture'

/** Pieces of the standard apertures, in nanometres about the origin (Gerber Layer Format Specification, "standard apertures": C, R, O, P). */
export function rectangle(widthNm: number, heightNm: number, isClear = false): AperturePiece {
  const [x, y] = [widthNm / 2, heightNm / 2]
  return { kind: 'polygon', isClear, points: [-x, -y, x, -y, x, y, -x, y] }
}

export function circle(diameterNm: number, isClear = false): AperturePiece {
  return { kind: 'circle', isClear, xNm: 0, yNm: 0, radiusNm: diameterNm / 2 }
}

/** A rectangle with half circles at its shorter sides. */
export function obround(widthNm: number, heightNm: number): AperturePiece[] {
  if (widthNm === heightNm) return [circle(widthNm)]
  const isWide = widthNm > heightNm
  const radiusNm = Math.min(widthNm, heightNm) / 2
  const reach = Math.max(widthNm, heightNm) / 2 - radiusNm
  const end = (at: number): AperturePiece => ({
    kind: 'circle',
    isClear: false,
    xNm: isWide ? at : 0,
    yNm: isWide ? 0 : at,
    radiusNm,
  })
  const middle = isWide ? rectangle(2 * reach, heightNm) : rectangle(widthNm, 2 * reach)
  return [middle, end(-reach), end(reach)]
}

/** Corners on a circle, the first at the angle of rotation from the x axis. */
export function regularPolygon(
  corners: number,
  diameterNm: number,
  rotationDeg: number,
  xNm = 0,
  yNm = 0,
  isClear = false,
): AperturePiece {
  const points: number[] = []
  for (let corner = 0; corner < corners; corner += 1) {
    const angle = (2 * Math.PI * corner) / corners + (rotationDeg * Math.PI) / 180
    points.push(xNm + (diameterNm / 2) * Math.cos(angle), yNm + (diameterNm / 2) * Math.sin(angle))
  }
  return { kind: 'polygon', isClear, points }
}
