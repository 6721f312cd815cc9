export { layProfileLimits, profileItem } from './combine'
export { DELIVERED_PROFILES } from './delivered'
export type { Profile } from './profile'
export { defineProfileFields, PROFILE_ITEM_IDS } from './profile-fields'
