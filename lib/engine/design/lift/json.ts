export type JsonObject = Readonly<Record<string, unknown>>

export function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** Changes the object at a key; what is no object there is left for the schema to refuse. */
export function changeAt(holder: JsonObject, key: string, change: (inner: JsonObject) => JsonObject): JsonObject {
  const inner = holder[key]
  return isObject(inner) ? { ...holder, [key]: change(inner) } : holder
}

/** Changes every object of the list at a key, as `changeAt` does. */
export function changeEach(holder: JsonObject, key: string, change: (entry: JsonObject) => JsonObject): JsonObject {
  const list = holder[key]
  if (!Array.isArray(list)) return holder
  return { ...holder, [key]: list.map((entry: unknown) => (isObject(entry) ? change(entry) : entry)) }
}
