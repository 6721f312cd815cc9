import type { PictureFrame } from '@/lib/artwork'
import { type Chosen, type DrawnLayer, UNIT_NM, type View } from '@/lib/artwork-picture'

/** What is painted: layers from the farthest to the nearest, each with what was chosen of it. */
export interface Scene {
  readonly view: View
  readonly frame: PictureFrame
  readonly layers: readonly PaintedLayer[]
}
export interface PaintedLayer {
  readonly layer: DrawnLayer
  readonly chosen: Chosen
  /** Each part from 0 to 1. */
  readonly colour: readonly [red: number, green: number, blue: number]
}

export interface Painter {
  readonly paint: (scene: Scene) => void
  readonly dispose: () => void
}

/** Layers below shine through. */
export const LAYER_OPACITY = 0.82
const UNITS_PER_MM = 1e6 / UNIT_NM

const SHAPE_VERTEX = `#version 300 es
in ivec2 corner;
uniform ivec2 middle;
uniform mat2 turn;
void main() {
  gl_Position = vec4(turn * vec2(corner - middle), 0.0, 1.0);
}`
const COVER_VERTEX = `#version 300 es
void main() {
  gl_Position = vec4(gl_VertexID == 1 ? 3.0 : -1.0, gl_VertexID == 2 ? 3.0 : -1.0, 0.0, 1.0);
}`
const FRAGMENT = `#version 300 es
precision mediump float;
uniform vec4 colour;
out vec4 shown;
void main() {
  shown = colour;
}`

/**
 * Paints by WebGL 2: the triangles of a layer's paths turn a bit of the stencil over, so that what lies within an odd number of borders is left set; it is
 * then covered once in the layer's colour. Corners are whole numbers up to the shader, so that no place shakes at any size. Null where the browser has no WebGL 2.
 */
export function makePainter(canvas: HTMLCanvasElement): Painter | null {
  const gl = canvas.getContext('webgl2', { antialias: true, stencil: true, alpha: true, premultipliedAlpha: true })
  if (gl === null) return null
  const [shape, cover] = [linkProgram(gl, SHAPE_VERTEX), linkProgram(gl, COVER_VERTEX)]
  if (shape === null || cover === null) return null
  const [middleAt, turnAt] = [gl.getUniformLocation(shape, 'middle'), gl.getUniformLocation(shape, 'turn')]
  const colourAt = gl.getUniformLocation(cover, 'colour')
  const kept = new Map<DrawnLayer, WebGLVertexArrayObject | null>()
  const buffers: WebGLBuffer[] = []

  const load = (layer: DrawnLayer): WebGLVertexArrayObject | null => {
    const known = kept.get(layer)
    if (known !== undefined) return known
    const arrays = gl.createVertexArray()
    gl.bindVertexArray(arrays)
    const corners = gl.createBuffer()
    gl.bindBuffer(gl.ARRAY_BUFFER, corners)
    gl.bufferData(gl.ARRAY_BUFFER, layer.corners, gl.STATIC_DRAW)
    const at = gl.getAttribLocation(shape, 'corner')
    gl.enableVertexAttribArray(at)
    gl.vertexAttribIPointer(at, 2, gl.INT, 0, 0)
    const triangles = gl.createBuffer()
    gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, triangles)
    gl.bufferData(gl.ELEMENT_ARRAY_BUFFER, listTriangles(layer), gl.STATIC_DRAW)
    gl.bindVertexArray(null)
    buffers.push(corners, triangles)
    kept.set(layer, arrays)
    return arrays
  }

  const paint = ({ view, frame, layers }: Scene) => {
    gl.viewport(0, 0, canvas.width, canvas.height)
    gl.clearColor(0, 0, 0, 0)
    gl.clearStencil(0)
    gl.stencilMask(1)
    gl.clear(gl.COLOR_BUFFER_BIT | gl.STENCIL_BUFFER_BIT)
    gl.enable(gl.STENCIL_TEST)
    gl.enable(gl.BLEND)
    gl.blendFunc(gl.ONE, gl.ONE_MINUS_SRC_ALPHA)
    const [x, y] = frame.toFiles(view.middleMm)
    const [a, b, c, d] = frame.turn
    const { clientWidth, clientHeight } = canvas
    const mmPerUnit = 1 / UNITS_PER_MM
    const right = ((view.isFromBelow ? -2 : 2) * mmPerUnit) / (view.mmPerPx * clientWidth)
    const up = (2 * mmPerUnit) / (view.mmPerPx * clientHeight)
    for (const { layer, chosen, colour } of layers) {
      const { pathStarts } = layer
      if (chosen.runs.length === 0) continue
      gl.bindVertexArray(load(layer))
      // biome-ignore lint/correctness/useHookAtTopLevel: of WebGL, and no hook.
      gl.useProgram(shape)
      gl.uniform2i(middleAt, Math.round(x * UNITS_PER_MM), Math.round(y * UNITS_PER_MM))
      gl.uniformMatrix2fv(turnAt, false, [right * a, up * c, right * b, up * d])
      gl.colorMask(false, false, false, false)
      gl.stencilFunc(gl.ALWAYS, 0, 1)
      gl.stencilOp(gl.KEEP, gl.KEEP, gl.INVERT)
      for (let at = 0; at < chosen.runs.length; at += 2) {
        const [first, end] = [
          firstTriangle(pathStarts, chosen.runs[at]),
          firstTriangle(pathStarts, chosen.runs[at + 1]),
        ]
        gl.drawElements(gl.TRIANGLES, 3 * (end - first), gl.UNSIGNED_INT, 12 * first)
      }
      // biome-ignore lint/correctness/useHookAtTopLevel: of WebGL, and no hook.
      gl.useProgram(cover)
      gl.bindVertexArray(null)
      gl.colorMask(true, true, true, true)
      gl.stencilFunc(gl.NOTEQUAL, 0, 1)
      gl.stencilOp(gl.ZERO, gl.ZERO, gl.ZERO)
      const [red, green, blue] = colour
      gl.uniform4f(colourAt, red * LAYER_OPACITY, green * LAYER_OPACITY, blue * LAYER_OPACITY, LAYER_OPACITY)
      gl.drawArrays(gl.TRIANGLES, 0, 3)
    }
  }
  const dispose = () => {
    for (const arrays of kept.values()) gl.deleteVertexArray(arrays)
    for (const buffer of buffers) gl.deleteBuffer(buffer)
    gl.deleteProgram(shape)
    gl.deleteProgram(cover)
  }
  return { paint, dispose }
}

/** Triangles before a path: each path of n corners has n − 2. */
const firstTriangle = (pathStarts: Uint32Array, path = 0): number => (pathStarts[path] ?? 0) - 2 * path

function listTriangles({ pathStarts }: DrawnLayer): Uint32Array {
  const pathCount = pathStarts.length - 1
  const indices = new Uint32Array(3 * firstTriangle(pathStarts, pathCount))
  let at = 0
  for (let path = 0; path < pathCount; path += 1) {
    const [start = 0, end = 0] = [pathStarts[path], pathStarts[path + 1]]
    for (let corner = start + 1; corner + 1 < end; corner += 1) {
      indices[at] = start
      indices[at + 1] = corner
      indices[at + 2] = corner + 1
      at += 3
    }
  }
  return indices
}

function linkProgram(gl: WebGL2RenderingContext, vertex: string): WebGLProgram | null {
  const program = gl.createProgram()
  for (const [kind, text] of [
    [gl.VERTEX_SHADER, vertex],
    [gl.FRAGMENT_SHADER, FRAGMENT],
  ] as const) {
    const shader = gl.createShader(kind)
    if (shader === null) return null
    gl.shaderSource(shader, text)
    gl.compileShader(shader)
    gl.attachShader(program, shader)
    gl.deleteShader(shader)
  }
  gl.linkProgram(program)
  return gl.getProgramParameter(program, gl.LINK_STATUS) ? program : null
}

/** Paints by the plain canvas, where there is no WebGL 2: slower, and the same picture. */
export function makePlainPainter(canvas: HTMLCanvasElement): Painter | null {
  const context = canvas.getContext('2d')
  if (context === null) return null
  const paint = ({ view, frame, layers }: Scene) => {
    const { width, height, clientWidth } = canvas
    const ratio = width / Math.max(1, clientWidth)
    context.setTransform(1, 0, 0, 1, 0, 0)
    context.clearRect(0, 0, width, height)
    const [x, y] = frame.toFiles(view.middleMm)
    const [a, b, c, d] = frame.turn
    const scale = ratio / (view.mmPerPx * UNITS_PER_MM)
    const right = view.isFromBelow ? -scale : scale
    context.globalAlpha = LAYER_OPACITY
    for (const { layer, chosen, colour } of layers) {
      const { corners, pathStarts } = layer
      const [middleX, middleY] = [x * UNITS_PER_MM, y * UNITS_PER_MM]
      context.fillStyle = `rgb(${colour.map((part) => Math.round(part * 255)).join(' ')})`
      context.beginPath()
      for (let at = 0; at < chosen.runs.length; at += 2) {
        for (let path = chosen.runs[at] ?? 0; path < (chosen.runs[at + 1] ?? 0); path += 1) {
          for (let corner = pathStarts[path] ?? 0; corner < (pathStarts[path + 1] ?? 0); corner += 1) {
            const dx = (corners[2 * corner] ?? 0) - middleX
            const dy = (corners[2 * corner + 1] ?? 0) - middleY
            const [px, py] = [width / 2 + right * (a * dx + b * dy), height / 2 - scale * (c * dx + d * dy)]
            if (corner === pathStarts[path]) context.moveTo(px, py)
            else context.lineTo(px, py)
          }
          context.closePath()
        }
      }
      context.fill('evenodd')
    }
  }
  return { paint, dispose: () => undefined }
}
