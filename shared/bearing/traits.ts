/** The traits that distinguish one arrangement from another. Shared code asks for a trait, never for a name. */
export interface Traits {
  /** The parts round the balls: rings inside one another, or plates one over the other. */
  readonly members: 'rings' | 'plates'
  /** The rolling elements: a ball touches in a point, a roller along a line. */
  readonly rolls: 'balls' | 'rollers'
  /** A full ring of balls that nothing keeps apart, or fewer of them, evenly spread by a cage. */
  readonly ballSet: 'full' | 'caged'
  /** The raceway: a groove with its lands, or a plain cylinder. */
  readonly raceway: 'groove' | 'track'
}
