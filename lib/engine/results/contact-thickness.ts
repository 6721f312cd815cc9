import type { ContactResult, ZoneResult } from './zone'

/** What a connector takes: a connector end over its contacts. Results of engines before 2.0 have no contacts apart. */
export function getConnectorThickness(zone: ZoneResult): Pick<ContactResult, 'thicknessUm' | 'worstCaseUm'> {
  return zone.contact ?? zone
}
