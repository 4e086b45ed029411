/** A request with the woods and the climate that stand beside its design moved into `design.making`. */
export function inMaking(asked: object): object {
  const { woods, climate, design, ...request }: { woods?: unknown; climate?: unknown; design?: unknown } = asked
  if (woods === undefined && climate === undefined) return asked
  const making = { ...(woods !== undefined && { woods }), ...(climate !== undefined && { climate }) }
  return { ...request, design: { ...Object(design), making } }
}
