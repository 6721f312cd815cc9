import {
  AmbientLight,
  BufferGeometry,
  Color,
  DirectionalLight,
  Float32BufferAttribute,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshLambertMaterial,
  OrthographicCamera,
  PerspectiveCamera,
  Scene,
  Sphere,
  Spherical,
  Vector3,
  WebGLRenderer,
} from 'three'
import { OrbitControls } from 'three/addons/controls/OrbitControls.js'
import { fillOfShape, SCREEN_PALETTE } from '@/lib/drawing'
import type { ShapeBody } from '@/lib/engine/folding'

export type Projection = 'parallel' | 'perspective'

export interface SpaceScene {
  readonly show: (bodies: readonly ShapeBody[]) => void
  readonly project: (projection: Projection) => void
  readonly turn: (rightDeg: number, upDeg: number) => void
  readonly frame: () => void
  readonly dispose: () => void
}

const VIEW_ANGLE_DEG = 30
const RAD_PER_DEG = Math.PI / 180

/** Draws into a canvas when something changes, never in a loop. Null where the browser has no WebGL. */
export function makeSpaceScene(canvas: HTMLCanvasElement, first: readonly ShapeBody[]): SpaceScene | null {
  const renderer = makeRenderer(canvas)
  if (renderer === null) return null
  const scene = new Scene()
  const cameras = {
    parallel: new OrthographicCamera(),
    perspective: new PerspectiveCamera(VIEW_ANGLE_DEG),
  }
  let part = new Group()
  let bounds = new Sphere()
  let camera: OrthographicCamera | PerspectiveCamera = cameras.parallel
  const light = new DirectionalLight(0xffffff, 2.2)
  scene.add(new AmbientLight(0xffffff, 1.4), light, light.target)

  const draw = () => {
    light.position.copy(camera.position)
    light.target.position.copy(bounds.center)
    renderer.render(scene, camera)
  }
  const controls = new OrbitControls<OrthographicCamera | PerspectiveCamera>(camera, canvas)
  controls.addEventListener('change', draw)

  const show = (bodies: readonly ShapeBody[]) => {
    scene.remove(part)
    disposeGroup(part)
    part = makeGroup(bodies, canvas)
    scene.add(part)
    draw()
  }
  const resize = () => {
    const { clientWidth, clientHeight } = canvas
    if (clientWidth === 0 || clientHeight === 0) return
    renderer.setSize(clientWidth, clientHeight, false)
    const aspect = clientWidth / clientHeight
    const half = bounds.radius * 1.08
    Object.assign(cameras.parallel, { left: -half * aspect, right: half * aspect, top: half, bottom: -half })
    cameras.perspective.aspect = aspect
    cameras.parallel.updateProjectionMatrix()
    cameras.perspective.updateProjectionMatrix()
    draw()
  }
  const frame = () => {
    bounds = boundsOf(part)
    const way = new Vector3(-0.5, -1, 0.6).normalize()
    const distance = (bounds.radius * 1.1) / Math.sin((VIEW_ANGLE_DEG / 2) * RAD_PER_DEG)
    for (const each of Object.values(cameras)) {
      each.up.set(0, 0, 1)
      each.position.copy(bounds.center).addScaledVector(way, distance)
      each.near = distance / 100
      each.far = distance * 10
      each.zoom = 1
    }
    controls.target.copy(bounds.center)
    resize()
    controls.update()
    draw()
  }
  const project = (projection: Projection) => {
    const next = cameras[projection]
    if (next === camera) return
    next.position.copy(camera.position)
    camera = next
    controls.object = camera
    controls.update()
    resize()
  }
  const turn = (rightDeg: number, upDeg: number) => {
    // Spherical counts from y up: z is up here.
    const from = camera.position.clone().sub(controls.target)
    const at = new Spherical().setFromCartesianCoords(from.y, from.z, from.x)
    at.theta -= rightDeg * RAD_PER_DEG
    at.phi = Math.min(Math.PI - 0.01, Math.max(0.01, at.phi - upDeg * RAD_PER_DEG))
    const to = new Vector3().setFromSpherical(at)
    camera.position.copy(controls.target).add(new Vector3(to.z, to.x, to.y))
    controls.update()
    draw()
  }
  const watcher = new ResizeObserver(resize)
  watcher.observe(canvas)
  // The browser may take the context away; it draws again once it is given back.
  const restore = () => draw()
  canvas.addEventListener('webglcontextrestored', restore)
  show(first)
  frame()
  return {
    show,
    project,
    turn,
    frame,
    dispose: () => {
      watcher.disconnect()
      canvas.removeEventListener('webglcontextrestored', restore)
      controls.dispose()
      disposeGroup(part)
      renderer.dispose()
    },
  }
}

function makeRenderer(canvas: HTMLCanvasElement): WebGLRenderer | null {
  try {
    const renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true })
    renderer.setPixelRatio(Math.min(2, globalThis.devicePixelRatio))
    return renderer
  } catch {
    return null
  }
}

function makeGroup(bodies: readonly ShapeBody[], place: HTMLElement): Group {
  const group = new Group()
  const line = new LineBasicMaterial({ color: resolveColour(SCREEN_PALETTE.ink, place) })
  for (const { name, role, faces } of bodies) {
    const triangles: number[] = []
    const edges: number[] = []
    for (const { corners, isEdge } of faces) {
      const [start, ...rest] = corners
      if (start === undefined) continue
      rest.slice(1).forEach((corner, at) => {
        triangles.push(...start, ...(rest[at] ?? corner), ...corner)
      })
      corners.forEach((corner, at) => {
        if (isEdge[at] === true) edges.push(...corner, ...(corners[(at + 1) % corners.length] ?? corner))
      })
    }
    const solid = new BufferGeometry().setAttribute('position', new Float32BufferAttribute(triangles, 3))
    solid.computeVertexNormals()
    const colour = resolveColour(SCREEN_PALETTE[fillOfShape(role)], place)
    // Pushed back a little, so that edges on a face are seen whole.
    const fill = new MeshLambertMaterial({
      color: colour,
      polygonOffset: true,
      polygonOffsetFactor: 1,
      polygonOffsetUnits: 1,
    })
    const mesh = new Mesh(solid, fill)
    mesh.name = name
    const outline = new BufferGeometry().setAttribute('position', new Float32BufferAttribute(edges, 3))
    group.add(mesh, new LineSegments(outline, line))
  }
  return group
}

function boundsOf(group: Group): Sphere {
  const points: Vector3[] = []
  group.traverse((each) => {
    if (!(each instanceof Mesh)) return
    const at = each.geometry.getAttribute('position')
    for (let index = 0; index < at.count; index += 1) points.push(new Vector3().fromBufferAttribute(at, index))
  })
  return new Sphere().setFromPoints(points)
}

function disposeGroup(group: Group): void {
  group.traverse((each) => {
    if (!(each instanceof Mesh) && !(each instanceof LineSegments)) return
    each.geometry.dispose()
    each.material.dispose()
  })
}

/** A colour of the theme as numbers: the browser resolves variables and the choice between light and dark. */
function resolveColour(css: string, place: HTMLElement): Color {
  const probe = document.createElement('span')
  probe.style.color = css
  place.parentElement?.append(probe)
  const colour = new Color(getComputedStyle(probe).color)
  probe.remove()
  return colour
}
