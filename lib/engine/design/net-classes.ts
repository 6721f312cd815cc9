import type { Design } from './design'
import type { ConductorFeature, NetClass } from './features'

export function findNetClass({ features }: Design, { netClassId }: ConductorFeature): NetClass | null {
  return netClassId === null ? null : (features.netClasses.find(({ id }) => id === netClassId) ?? null)
}

const known = new WeakMap<ConductorFeature, { readonly netClass: NetClass; readonly conductor: ConductorFeature }>()

/** What a conductor needs: each of its own statements, and its class's where it makes none. */
function withClass(conductor: ConductorFeature, netClass: NetClass): ConductorFeature {
  const before = known.get(conductor)
  if (before?.netClass === netClass) return before.conductor
  const { impedance } = conductor
  const filled: ConductorFeature = {
    ...conductor,
    impedanceOhm: conductor.impedanceOhm ?? netClass.impedanceOhm,
    impedance: {
      ...impedance,
      tolerancePct: impedance.tolerancePct ?? netClass.tolerancePct,
      kind: impedance.kind ?? netClass.kind,
      // A class may have conductors on several layers, one of them its reference.
      referenceLayerId:
        impedance.referenceLayerId ??
        (netClass.referenceLayerId === conductor.layerId ? null : netClass.referenceLayerId),
      coupon: impedance.coupon ?? netClass.coupon,
    },
  }
  known.set(conductor, { netClass, conductor: filled })
  return filled
}

/**
 * The design with the needs of its net classes written at each conductor: what everything that asks about a conductor looks at.
 *
 * @returns the design itself where no conductor is of a class; a conductor that did not change is the same object each time
 */
export function withNetClasses(design: Design): Design {
  const { features } = design
  if (features.conductors.every((conductor) => findNetClass(design, conductor) === null)) return design
  const conductors = features.conductors.map((conductor) => {
    const netClass = findNetClass(design, conductor)
    return netClass === null ? conductor : withClass(conductor, netClass)
  })
  return { ...design, features: { ...features, conductors } }
}
