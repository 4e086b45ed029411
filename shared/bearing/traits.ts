/** What distinguishes one arrangement from another. Shared code asks for a trait, never for a name. */
export interface Traits {
  /** What lies round the balls: rings inside one another, or plates one over the other. */
  readonly members: 'rings' | 'plates'
  /** What rolls: a ball touches in a point, a roller along a line. */
  readonly rolls: 'balls' | 'rollers'
  /** What keeps the balls apart: nothing, in a ring that is full of them, or a cage that holds fewer of them evenly. */
  readonly ballSet: 'full' | 'caged'
  /** What it rolls in: a groove with its lands, or a plain cylinder. */
  readonly raceway: 'groove' | 'track'
}
