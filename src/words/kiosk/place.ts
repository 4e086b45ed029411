/** Words of the step that asks for the wood and the place. */
export const PLACE = {
  name: 'Your own name for the bearing',
  parts: { outerRing: 'Wood of the outer ring', innerRing: 'Wood of the inner ring', plates: 'Wood of the plates' },
  balls: 'Wood of the balls',
  construction: 'How it is cut or built',
  unknown: 'not chosen',
  air: 'Relative humidity of the air, in %',
  today: 'today, in the workshop',
  driest: 'in the driest time',
  dampest: 'in the dampest time',
  temperature: 'Temperature, in °C',
  ask: 'Choose the wood and fill in the three humidities: then the year is worked out.',
  year: 'The year',
  apply: 'Take this advice',
  runs: 'run then',
} as const

export const CONSTRUCTION_NAMES: Readonly<Record<string, string>> = {
  'flat-sawn': 'flat-sawn board',
  'quarter-sawn': 'quarter-sawn board',
  segmented: 'segments, flat-sawn',
  'segmented-quarter-sawn': 'segments, quarter-sawn',
  'cross-laminated-ply': 'plywood',
}

export const STATE_NAMES: Readonly<Record<string, string>> = {
  today: 'today',
  driest: 'driest',
  dampest: 'dampest',
}
